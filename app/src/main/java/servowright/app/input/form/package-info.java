/**
 * What may stand in the machine's files, and the check of a tree against it. The forms are made from the enumerations of
 * {@code engine.machine}; the reader, the JSON Schema and the table of keys are made from the forms.
 */
@NullMarked
package servowright.app.input.form;

import org.jspecify.annotations.NullMarked;
