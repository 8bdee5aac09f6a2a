/** Benchmarks of the engine's hot paths: a long fit and a worksheet. */
@NullMarked
package servowright.benchmarks.engine;

import org.jspecify.annotations.NullMarked;
