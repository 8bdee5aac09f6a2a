package servowright.engine.prediction;

import java.util.Optional;
import servowright.engine.known.Known;

/**
 * The supply from empty to full against what a drive takes.
 *
 * @param empty lowest supply voltage, V
 * @param full  highest supply voltage, V
 * @param least lowest voltage the drive takes, V
 * @param most  highest voltage the drive takes, V
 * @param trip  voltage at which it switches off, if stated, V
 */
public record SupplyWindow(Known empty, Known full, Known least, Known most, Optional<Known> trip) {}
