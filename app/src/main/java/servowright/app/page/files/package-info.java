/** The machine's text files and their changes, on the page. */
@NullMarked
package servowright.app.page.files;

import org.jspecify.annotations.NullMarked;
