package servowright.app.page.bench;

import java.io.ByteArrayInputStream;
import java.io.IOException;

/** Brings content to the door behind which recordings wait. */
public final class IncomingProbe {
    private IncomingProbe() {}

    /** Why it was not taken; empty when it was. */
    public static String refusal(long most, byte[] content) throws IOException {
        Incoming incoming = new Incoming(most);
        try {
            incoming.done(incoming.take("x.csv.gz", new ByteArrayInputStream(content)));
            return "";
        } catch (Incoming.Refused e) {
            return String.valueOf(e.getMessage());
        }
    }
}
