/**
 * Mathematics on plain doubles: least squares (linear, nonlinear, harmonic), statistics, Monte Carlo propagation,
 * roots, minima and derivatives. No trade word appears here and no type of a third-party library shows in a signature.
 *
 * <p>Rules of the package:
 *
 * <ul>
 *   <li>Inputs are arrays that are read and never changed or kept; results are immutable.
 *   <li>Wrong use (lengths that differ, a negative standard deviation, NaN among the observations) is refused with an
 *       {@link java.lang.IllegalArgumentException}. Mathematics that finds no answer is a returned value: a
 *       {@link servowright.engine.numeric.FitStatus} or an empty optional. Where a status is not {@code CONVERGED} the
 *       figures beside it are NaN or the last ones reached, and are not an answer.
 *   <li>Random numbers come from a generator that the caller passes in.
 * </ul>
 *
 * <p>Assumptions and limits: the fits take the regressors as exact and the errors as additive with zero mean. Their
 * covariance is of first order, so an interval from it is approximate where the model bends within the interval; Monte
 * Carlo is the check. Residuals that depend on their neighbours, and samples that were rounded to a step, make a plain
 * least-squares uncertainty too small; {@link servowright.engine.numeric.Whiteness} and
 * {@link servowright.engine.numeric.Rounding} say by how much. An error that is the same in all samples (gain, clock)
 * leaves no trace in residuals and has to be added by the caller.
 */
@NullMarked
package servowright.engine.numeric;

import org.jspecify.annotations.NullMarked;
