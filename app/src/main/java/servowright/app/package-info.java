/** The program: from the command line to what it shows. */
@NullMarked
package servowright.app;

import org.jspecify.annotations.NullMarked;
