package servowright.app.cli;

import servowright.engine.acceptance.Verdict;

/** How words stand out on a terminal. The words themselves always say the same without it. */
enum Ink {
    BOLD("1"),
    DIM("2"),
    RED("1;31"),
    YELLOW("33"),
    BLUE("34"),
    GREEN("32");

    private final String code;

    Ink(String code) {
        this.code = code;
    }

    String on(String text) {
        return "\u001b[" + code + "m" + text + "\u001b[0m";
    }

    static Ink of(Verdict verdict) {
        return switch (verdict) {
            case FAILS -> RED;
            case TIGHT -> YELLOW;
            case NOT_SHOWN -> BLUE;
            case HOLDS -> GREEN;
        };
    }
}
