/** The pages in docs that the worksheets and cases write themselves: formulas and validation. */
@NullMarked
package servowright.app.reference;

import org.jspecify.annotations.NullMarked;
