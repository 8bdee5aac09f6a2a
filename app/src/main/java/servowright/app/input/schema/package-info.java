/** Schemas for editors and the table of keys, made from the forms that the files are checked against. */
@NullMarked
package servowright.app.input.schema;

import org.jspecify.annotations.NullMarked;
