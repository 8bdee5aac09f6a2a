/** The command line: verbs, text screens, exit codes. Every string it shows comes from the view. */
@NullMarked
package servowright.app.cli;

import org.jspecify.annotations.NullMarked;
