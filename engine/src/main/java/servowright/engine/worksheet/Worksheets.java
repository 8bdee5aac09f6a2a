package servowright.engine.worksheet;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import servowright.engine.worksheet.bus.BitTimingSheet;
import servowright.engine.worksheet.bus.BusTerminatorsSheet;
import servowright.engine.worksheet.bus.CycleLoadSheet;
import servowright.engine.worksheet.bus.FaultProbabilitySheet;
import servowright.engine.worksheet.bus.FdClockToleranceSheet;
import servowright.engine.worksheet.bus.FrameLengthSheet;
import servowright.engine.worksheet.bus.GroundShiftSheet;
import servowright.engine.worksheet.bus.LoopDelaySheet;
import servowright.engine.worksheet.bus.PollingCycleSheet;
import servowright.engine.worksheet.bus.ResponseTimesSheet;
import servowright.engine.worksheet.bus.TimingRegistersSheet;
import servowright.engine.worksheet.bus.TimingSearchSheet;
import servowright.engine.worksheet.bus.TrunkCableSheet;
import servowright.engine.worksheet.drive.BridgeLossSheet;
import servowright.engine.worksheet.drive.ControlStepsSheet;
import servowright.engine.worksheet.drive.CurrentLoopSheet;
import servowright.engine.worksheet.drive.DeadTimeBiasSheet;
import servowright.engine.worksheet.drive.PwmRippleSheet;
import servowright.engine.worksheet.drive.SupplyCurrentSheet;
import servowright.engine.worksheet.duty.BrakeEnergySheet;
import servowright.engine.worksheet.duty.CoastDownSheet;
import servowright.engine.worksheet.duty.CopperHeatSheet;
import servowright.engine.worksheet.duty.DutyTorqueSheet;
import servowright.engine.worksheet.duty.MoveTorqueSheet;
import servowright.engine.worksheet.duty.TwoNodeDutySheet;
import servowright.engine.worksheet.duty.TwoNodeHeatSheet;
import servowright.engine.worksheet.encoder.EncoderSheets;
import servowright.engine.worksheet.motor.CurrentAndTorqueSheet;
import servowright.engine.worksheet.motor.FieldWeakeningSheet;
import servowright.engine.worksheet.motor.HotMotorSheet;
import servowright.engine.worksheet.motor.MotorConstantsSheet;
import servowright.engine.worksheet.motor.NamedRatioSheet;
import servowright.engine.worksheet.motor.PolePairsSheet;
import servowright.engine.worksheet.motor.ResistanceRiseSheet;
import servowright.engine.worksheet.motor.ShortCircuitSheet;
import servowright.engine.worksheet.motor.SpeedRangeSheet;
import servowright.engine.worksheet.motor.SpinReadingSheet;
import servowright.engine.worksheet.motor.SpinVoltageSheet;
import servowright.engine.worksheet.motor.StarDeltaSheet;
import servowright.engine.worksheet.motor.WindingFactorSheet;
import servowright.engine.worksheet.motor.WindingInductanceSheet;
import servowright.engine.worksheet.motor.WindingResistanceSheet;

/** Every worksheet there is. A new one is added here and nowhere else. */
public final class Worksheets {
    private static final List<Worksheet> MOTOR_DRIVE_DUTY = List.of(
            new MotorConstantsSheet(),
            new PolePairsSheet(),
            new WindingResistanceSheet(),
            new WindingInductanceSheet(),
            new StarDeltaSheet(),
            new WindingFactorSheet(),
            new SpinReadingSheet(),
            new SpinVoltageSheet(),
            new SpeedRangeSheet(),
            new CurrentAndTorqueSheet(),
            new HotMotorSheet(),
            new ResistanceRiseSheet(),
            new ShortCircuitSheet(),
            new FieldWeakeningSheet(),
            new NamedRatioSheet(),
            new SupplyCurrentSheet(),
            new ControlStepsSheet(),
            new CurrentLoopSheet(),
            new PwmRippleSheet(),
            new DeadTimeBiasSheet(),
            new BridgeLossSheet(),
            new MoveTorqueSheet(),
            new CopperHeatSheet(),
            new TwoNodeHeatSheet(),
            new DutyTorqueSheet(),
            new TwoNodeDutySheet(),
            new CoastDownSheet(),
            new BrakeEnergySheet());

    private static final List<Worksheet> BUS = List.of(
            new FrameLengthSheet(),
            new ResponseTimesSheet(),
            new FaultProbabilitySheet(),
            new CycleLoadSheet(),
            new PollingCycleSheet(),
            new BitTimingSheet(),
            new TimingSearchSheet(),
            new TimingRegistersSheet(),
            new FdClockToleranceSheet(),
            new LoopDelaySheet(),
            new BusTerminatorsSheet(),
            new TrunkCableSheet(),
            new GroundShiftSheet());

    private static final List<Worksheet> ALL = Stream.of(MOTOR_DRIVE_DUTY, EncoderSheets.all(), BUS)
            .flatMap(List::stream)
            .toList();

    private Worksheets() {}

    /** All worksheets in the order a person would need them. */
    public static List<Worksheet> all() {
        return ALL;
    }

    /** The worksheet of that name. */
    public static Optional<Worksheet> named(String name) {
        return ALL.stream().filter(w -> w.declaration().name().equals(name)).findFirst();
    }
}
