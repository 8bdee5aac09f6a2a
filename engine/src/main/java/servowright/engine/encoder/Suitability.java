package servowright.engine.encoder;

import servowright.engine.quantity.Require;

/**
 * Whether a way to know the angle serves a use, with the figure that decides.
 *
 * @param grade yes, with conditions, no
 * @param reason in words, without the figure
 * @param figure that decides, in {@code unit}
 * @param unit of the figure as a person reads it
 */
public record Suitability(Grade grade, String reason, double figure, String unit) {

    /** How well it serves. */
    public enum Grade {
        YES,
        WITH_CONDITIONS,
        NO
    }

    /** What an angle is needed for. */
    public enum Use {
        START_WITHOUT_MOTION,
        LOW_SPEED,
        POSITION_HOLD,
        HIGH_ELECTRICAL_FREQUENCY,
        CONTINUOUS_ROTATION,
        OUTPUT_POSITION
    }

    /** Electrical angle, degrees, that a chain may lose without being compensated, and the most that can be compensated. */
    private static final double LOST_FREELY = 10;

    private static final double LOST_AT_MOST = 60;

    /** Steps between two readings above which a difference gives the speed to a tenth. */
    private static final double STEPS_FOR_SPEED = 10;

    /**
     * What the axis asks and the sensor has.
     *
     * @param polePairs of the motor
     * @param stepRad smallest step of the angle, mechanical
     * @param delaySecond from angle to number
     * @param sampleSecond time between two readings of the loop
     * @param fastestRadPerSecond highest speed of the motor
     * @param slowestRadPerSecond lowest speed to be held
     * @param holdRad how still a position must be, at the motor
     * @param gearRatio motor turns per turn of the output
     * @param outputTravelRad travel of the output; infinite for one that turns on and on
     */
    public record Demand(
            int polePairs,
            double stepRad,
            double delaySecond,
            double sampleSecond,
            double fastestRadPerSecond,
            double slowestRadPerSecond,
            double holdRad,
            double gearRatio,
            double outputTravelRad) {
        public Demand {
            Require.atLeast("pole pairs", 1, polePairs);
            Require.positive("step", stepRad, "rad");
            Require.notNegative("delay", delaySecond, "s");
            Require.positive("sample time", sampleSecond, "s");
            Require.positive("highest speed", fastestRadPerSecond, "rad/s");
            Require.positive("lowest speed", slowestRadPerSecond, "rad/s");
            Require.positive("stillness", holdRad, "rad");
            Require.positive("gear ratio", gearRatio, "");
        }
    }

    /** The answer for one use. */
    public static Suitability of(AngleSource source, Use use, Demand demand) {
        return switch (use) {
            case START_WITHOUT_MOTION -> start(source, demand);
            case LOW_SPEED -> lowSpeed(source, demand);
            case POSITION_HOLD -> hold(source, demand);
            case HIGH_ELECTRICAL_FREQUENCY -> fast(demand);
            case CONTINUOUS_ROTATION -> continuous(source, demand);
            case OUTPUT_POSITION -> output(source, demand);
        };
    }

    private static Suitability start(AngleSource source, Demand demand) {
        double halfElectrical = 180.0 / demand.polePairs;
        if (source.knowsAtStart()) {
            double degree = Math.toDegrees(demand.polePairs * demand.stepRad);
            return new Suitability(Grade.YES, "the electrical angle is known at once, to", degree, "deg el.");
        }
        return switch (source) {
            case HALL_TRIPLE ->
                new Suitability(
                        Grade.WITH_CONDITIONS,
                        "the sixth of the electrical turn is known; least torque at the start",
                        100 * Math.cos(Math.PI / 6),
                        "%");
            case INCREMENTAL, INCREMENTAL_WITH_INDEX ->
                new Suitability(
                        Grade.NO,
                        "the rotor must first be pulled to a field; it moves by up to",
                        halfElectrical,
                        "deg");
            default ->
                new Suitability(
                        Grade.NO,
                        "at rest there is no voltage to read; the rotor moves by up to",
                        halfElectrical,
                        "deg");
        };
    }

    private static double step(AngleSource source, Demand demand) {
        return source == AngleSource.HALL_TRIPLE ? Math.PI / 3 / demand.polePairs : demand.stepRad;
    }

    private static Suitability lowSpeed(AngleSource source, Demand demand) {
        if (source == AngleSource.NONE) {
            return new Suitability(
                    Grade.NO,
                    "the voltage of the motor fades with the speed; share of the highest",
                    share(demand),
                    "%");
        }
        double steps = demand.slowestRadPerSecond * demand.sampleSecond / step(source, demand);
        Grade grade = steps >= STEPS_FOR_SPEED ? Grade.YES : Grade.WITH_CONDITIONS;
        if (source == AngleSource.HALL_TRIPLE && steps < 1.0 / STEPS_FOR_SPEED) {
            grade = Grade.NO;
        }
        String reason = grade == Grade.YES
                ? "every reading is many steps on"
                : "the speed must come from an observer or from times between edges; steps per reading";
        return new Suitability(grade, reason, steps, "steps");
    }

    private static double share(Demand demand) {
        return 100 * demand.slowestRadPerSecond / demand.fastestRadPerSecond;
    }

    private static Suitability hold(AngleSource source, Demand demand) {
        if (source == AngleSource.NONE) {
            return new Suitability(
                    Grade.NO, "a rotor at rest gives no angle; uncertain within", 180.0 / demand.polePairs, "deg");
        }
        double steps = demand.holdRad / step(source, demand);
        Grade grade = steps >= 4 ? Grade.YES : steps >= 1 ? Grade.WITH_CONDITIONS : Grade.NO;
        return new Suitability(grade, "steps within the stillness asked for", steps, "steps");
    }

    private static Suitability fast(Demand demand) {
        double lost = Math.toDegrees(
                new Latency(demand.delaySecond).electricalRad(demand.polePairs, demand.fastestRadPerSecond));
        Grade grade = lost <= LOST_FREELY ? Grade.YES : lost <= LOST_AT_MOST ? Grade.WITH_CONDITIONS : Grade.NO;
        String reason = grade == Grade.WITH_CONDITIONS
                ? "the delay must be compensated; electrical angle lost at the highest speed"
                : "electrical angle lost at the highest speed";
        return new Suitability(grade, reason, lost, "deg el.");
    }

    private static Suitability continuous(AngleSource source, Demand demand) {
        if (source == AngleSource.INCREMENTAL) {
            return new Suitability(
                    Grade.WITH_CONDITIONS,
                    "a count once lost stays lost, and nothing notices; electrical angle per count",
                    Math.toDegrees(demand.polePairs * demand.stepRad),
                    "deg el.");
        }
        double turns = new Resolution(2 * Math.PI / step(source, demand)).turnsInCounter(32);
        return new Suitability(
                Grade.YES, "the angle is renewed every turn; a counter of 32 bits begins again after", turns, "turns");
    }

    private static Suitability output(AngleSource source, Demand demand) {
        boolean endless = Double.isInfinite(demand.outputTravelRad);
        double travel = endless ? 2 * Math.PI : demand.outputTravelRad;
        int meanings = GearedAngle.meanings(demand.gearRatio, travel);
        if (!source.knowsWithinTurn()) {
            return new Suitability(
                    Grade.NO,
                    "the output must be driven to a mark after every start; readings alike",
                    meanings,
                    "places");
        }
        return meanings == 1
                ? new Suitability(Grade.YES, "one reading is one place of the output", 1, "place")
                : new Suitability(
                        Grade.WITH_CONDITIONS,
                        "a second sensor on the output or a mark must tell the turn; one reading is any of",
                        meanings,
                        "places");
    }
}
