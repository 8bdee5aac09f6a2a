/**
 * Text files as trees whose every part knows its line. Scalars stay text exactly as written; what they mean is decided
 * where they are asked for. Whatever a file holds, it ends in a tree or in problems, never in an exception.
 */
@NullMarked
package servowright.app.input.tree;

import org.jspecify.annotations.NullMarked;
