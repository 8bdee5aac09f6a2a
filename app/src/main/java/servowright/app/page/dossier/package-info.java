/** The written record, on the page. */
@NullMarked
package servowright.app.page.dossier;

import org.jspecify.annotations.NullMarked;
