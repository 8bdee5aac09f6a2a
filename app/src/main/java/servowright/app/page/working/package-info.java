/** How a figure came about, on the page. */
@NullMarked
package servowright.app.page.working;

import org.jspecify.annotations.NullMarked;
