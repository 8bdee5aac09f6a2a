/** What the kernel of a computer tells of its CAN interfaces, as people paste it. */
@NullMarked
package servowright.app.input.link;

import org.jspecify.annotations.NullMarked;
