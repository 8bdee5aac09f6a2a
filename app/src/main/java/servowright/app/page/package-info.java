/** The page in the browser: the machine's folder, served to this computer alone. */
@NullMarked
package servowright.app.page;

import org.jspecify.annotations.NullMarked;
