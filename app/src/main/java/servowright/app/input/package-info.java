/**
 * Reads the folder of a machine: machine.yaml, bench.yaml and the recordings that bench.yaml names. Every mistake in any
 * of them is named at once, with file, line and remedy.
 */
@NullMarked
package servowright.app.input;

import org.jspecify.annotations.NullMarked;
