/**
 * Findings: judged statements about the machine. Each rule is one file; thresholds and advice live here and nowhere
 * else.
 */
@NullMarked
package servowright.engine.findings;

import org.jspecify.annotations.NullMarked;
