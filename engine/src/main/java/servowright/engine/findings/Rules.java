package servowright.engine.findings;

import java.util.List;
import java.util.Optional;

/** Every rule there is. A new one is added here and nowhere else. */
public final class Rules {
    private static final List<Rule> ALL = List.of(
            new PolePairsRule(),
            new BasisMismatchRule(),
            new HookUpMismatchRule(),
            new LabelAgainstBenchRule(),
            new BasisNotStatedRule(),
            new MagnetCountRule(),
            new SlotsAndPolesRule(),
            new CoggingCountRule(),
            new PhasesDifferRule(),
            new TestRefusedRule(),
            new ThermistorConstantsRule(),
            new SupplyWindowRule(),
            new SpeedReachRule(),
            new RotorSpeedRule(),
            new ElectricalFrequencyRule(),
            new ControlStepsRule(),
            new AngleLostRule(),
            new SensorFieldRule(),
            new ElementDepthRule(),
            new MountAngleRule(),
            new SensorStartRule(),
            new EdgeRateRule(),
            new LineClockRule(),
            new HandTurnRule(),
            new NotFollowedRule(),
            new RotorTrappedRule(),
            new FrictionLagRule(),
            new TravelTooSmallRule(),
            new OrdersMissingRule(),
            new NotRepeatableRule(),
            new AngleErrorRule(),
            new OffsetsDisagreeRule(),
            new ReseatingRule(),
            new PeakCurrentRule(),
            new ContinuousCurrentRule(),
            new DrivePowerRule(),
            new TorqueReserveRule(),
            new RatedTorqueRule(),
            new OverspeedRule(),
            new ReturnedCurrentRule(),
            new BusRiseRule(),
            new SupplyCurrentRule(),
            new FuseRule(),
            new BusLoadRule(),
            new BusResponseRule(),
            new BusSameIdRule(),
            new BusTerminatorsRule(),
            new BusStubRule(),
            new BusLengthRule(),
            new BusFarEndRule(),
            new BusTimingRule(),
            new BusGroundRule(),
            new BusWatchdogRule(),
            new BusStopReleaseRule(),
            new BusReturnRule(),
            new BusStampsRule(),
            new BusMissingRule(),
            new BusPeriodRule(),
            new BusArrivalRule(),
            new BusUnplannedRule(),
            new BusLoadSeenRule(),
            new BusScaleRule(),
            BusRemarkRule.twoSenders(),
            BusRemarkRule.errors(),
            BusRemarkRule.restarts(),
            BusRemarkRule.releases());

    private Rules() {}

    /** All rules in the order in which a person would ask. */
    public static List<Rule> all() {
        return ALL;
    }

    /** The rule of that id. */
    public static Optional<Rule> named(String id) {
        return ALL.stream().filter(r -> r.id().equals(id)).findFirst();
    }
}
