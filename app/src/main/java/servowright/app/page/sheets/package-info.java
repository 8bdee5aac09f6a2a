/** One calculation each, as a form, on the page. */
@NullMarked
package servowright.app.page.sheets;

import org.jspecify.annotations.NullMarked;
