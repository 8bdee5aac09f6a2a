/**
 * From the user's text files to the engine's records. Every mistake becomes a problem with file and line; all of them are
 * collected before anything is refused.
 */
@NullMarked
package servowright.app.input;

import org.jspecify.annotations.NullMarked;
