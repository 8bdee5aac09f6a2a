/**
 * The bench plan: tests worth doing in a safe order, each with its hook-up, cautions, what it should read and the verdict
 * once it was read. It owns no formula: every expected reading comes out of the physics packages.
 */
@NullMarked
package servowright.engine.procedure;

import org.jspecify.annotations.NullMarked;
