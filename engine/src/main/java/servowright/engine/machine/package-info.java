/**
 * The machine as it is declared: partial by nature, every figure with the place where it stands. This package knows no
 * formula. The keys of each part are enumerated with dimension, range and meaning; the reader of the files, the JSON
 * schema and the documentation are made from that enumeration.
 */
@NullMarked
package servowright.engine.machine;

import org.jspecify.annotations.NullMarked;
