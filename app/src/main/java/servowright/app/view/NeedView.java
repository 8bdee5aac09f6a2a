package servowright.app.view;

import servowright.engine.known.Outcome;

/** Something that would settle a question, and how to get it. */
public record NeedView(String what, String settle) {
    static NeedView of(Outcome.Need need) {
        return new NeedView(need.what(), need.settle());
    }

    /** {@code rotor inertia of hub: state it in machine.yaml}. */
    public String text() {
        return settle.isEmpty() ? what : what + ": " + settle;
    }
}
