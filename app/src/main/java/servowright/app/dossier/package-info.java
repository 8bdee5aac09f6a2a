/** The written record of a machine: one HTML file that needs nothing else. */
@NullMarked
package servowright.app.dossier;

import org.jspecify.annotations.NullMarked;
