/**
 * Worksheets: one calculation each, with inputs, working, results and sources declared once. The command line, the page,
 * the documentation and the cases come from that one declaration. A worksheet owns no formula: it hands named inputs to a
 * physics class and writes down how.
 */
@NullMarked
package servowright.engine.worksheet;

import org.jspecify.annotations.NullMarked;
