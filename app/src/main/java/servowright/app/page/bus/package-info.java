/** The network between the drives, on the page. */
@NullMarked
package servowright.app.page.bus;

import org.jspecify.annotations.NullMarked;
