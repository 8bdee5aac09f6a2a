/** Speed of the readers, measured by JMH; docs/performance.md says how to run it and what came out. */
@NullMarked
package servowright.benchmarks;

import org.jspecify.annotations.NullMarked;
