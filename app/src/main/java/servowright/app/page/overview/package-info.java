/** The first view, on the page. */
@NullMarked
package servowright.app.page.overview;

import org.jspecify.annotations.NullMarked;
