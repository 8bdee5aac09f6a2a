/** What fails, is tight, holds or is not shown, on the page. */
@NullMarked
package servowright.app.page.findings;

import org.jspecify.annotations.NullMarked;
