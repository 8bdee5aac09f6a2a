package servowright.app.page;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import servowright.app.OpenPage;

/** Requests written byte by byte, as no well-behaved client would send them. */
record RawRequest(String address) {
    RawRequest(OpenPage page) {
        this(page.address());
    }

    /** Status and headers and body, as they came. */
    record Answer(int status, String text) {}

    private int port() {
        return URI.create(address).getPort();
    }

    private String key() {
        return address.substring(address.indexOf("key=") + 4);
    }

    /** A request that the page would accept, but for what is changed in it. */
    String get(String path) {
        return "GET " + path + " HTTP/1.1\r\nHost: 127.0.0.1:" + port() + "\r\n" + cookie()
                + "Connection: close\r\n\r\n";
    }

    String post(String path, String headers, String body) {
        return "POST " + path + " HTTP/1.1\r\nHost: 127.0.0.1:" + port() + "\r\n" + headers
                + "Connection: close\r\n\r\n" + body;
    }

    String cookie() {
        return "Cookie: servowright-" + port() + "=" + key() + "\r\n";
    }

    String origin() {
        return "Origin: " + address.substring(0, address.indexOf("/?")) + "\r\n";
    }

    static String form(String body) {
        return "Content-Type: application/x-www-form-urlencoded\r\nContent-Length: " + body.length() + "\r\n";
    }

    Answer send(String request) throws IOException {
        return send(request.getBytes(StandardCharsets.UTF_8));
    }

    Answer send(byte[] request) throws IOException {
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port())) {
            socket.setSoTimeout(30_000);
            OutputStream out = socket.getOutputStream();
            try {
                out.write(request);
                out.flush();
            } catch (IOException refusedMeanwhile) {
                // What was said before the connection was cut can still be read.
            }
            StringBuilder all = new StringBuilder();
            InputStream in = socket.getInputStream();
            try {
                all.append(new String(in.readAllBytes(), StandardCharsets.UTF_8));
            } catch (IOException cut) {
                all.append(" cut: ").append(cut.getMessage());
            }
            String text = all.toString();
            int status = text.startsWith("HTTP/1.1 ") ? Integer.parseInt(text.substring(9, 12)) : 0;
            return new Answer(status, text);
        }
    }
}
