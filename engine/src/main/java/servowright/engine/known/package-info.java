/**
 * What is known and how well: a figure with its uncertainty and origin, the working that led to it, an answer or what is
 * missing for one, and a problem with the input.
 *
 * <p>A {@link servowright.engine.known.Known} is an uncertain number in the sense of the law of propagation of
 * uncertainty (JCGM 100:2008, 5.1 and 5.2): it keeps how much each independent source contributes, with sign, so that
 * two figures that share an input stay correlated without anybody asking for it.
 */
@NullMarked
package servowright.engine.known;

import org.jspecify.annotations.NullMarked;
