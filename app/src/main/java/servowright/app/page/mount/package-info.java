/** Magnets before their sensors, on the page. */
@NullMarked
package servowright.app.page.mount;

import org.jspecify.annotations.NullMarked;
