/** One axis with its parts, on the page. */
@NullMarked
package servowright.app.page.axes;

import org.jspecify.annotations.NullMarked;
