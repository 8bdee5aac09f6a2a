/**
 * Reads the text files that scopes, loggers and drives leave behind. The layout is found by evidence, never by brand;
 * what was concluded is said in remarks, and what cannot be known is asked for.
 */
@NullMarked
package servowright.app.input.csv;

import org.jspecify.annotations.NullMarked;
