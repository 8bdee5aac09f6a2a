package servowright.app.cli;

/** Everything that the terminal shows of the frost cart. */
public final class Shown {
    private Shown() {}

    public static String everything() {
        StringBuilder all = new StringBuilder(Typed.type("assess", "--all").out());
        all.append(Typed.type("bench").out());
        for (String key : new String[] {"lift/speed-reach", "left wheel/torque-reserve", "tilt/heat"}) {
            all.append(Typed.type("explain", key).out());
        }
        return all.toString();
    }
}
