/** What was measured, and taking readings, on the page. */
@NullMarked
package servowright.app.page.bench;

import org.jspecify.annotations.NullMarked;
