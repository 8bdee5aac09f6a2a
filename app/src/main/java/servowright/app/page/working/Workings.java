package servowright.app.page.working;

import servowright.app.page.Asked;
import servowright.app.view.FindingView;

/** Addresses of workings. */
public final class Workings {
    private Workings() {}

    /** Of a finding. */
    public static String finding(FindingView finding) {
        return "/working?finding=" + Asked.encoded(finding.key());
    }

    /** Of one value of a motor's parameter; the best is number 0. */
    public static String parameter(String motor, String parameter, int number) {
        return "/working?motor=" + Asked.encoded(motor) + "&parameter=" + Asked.encoded(parameter) + "&number="
                + number;
    }

    /** Of what a bench test gave. */
    public static String test(String test, String value) {
        return "/working?test=" + Asked.encoded(test) + "&value=" + Asked.encoded(value);
    }
}
