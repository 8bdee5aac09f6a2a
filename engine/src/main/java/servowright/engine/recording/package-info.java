/**
 * A log or a scope trace as a value: channels, their clock, what was found odd about them, and the hash of the file they
 * came from. Pure functions look for the defects that logs have; nothing here opens a file.
 */
@NullMarked
package servowright.engine.recording;

import org.jspecify.annotations.NullMarked;
