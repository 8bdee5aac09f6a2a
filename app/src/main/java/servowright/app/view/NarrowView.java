package servowright.app.view;

import servowright.engine.findings.Narrowing;

/**
 * A parameter that, measured better, would narrow a prediction.
 *
 * @param motor     name of the motor
 * @param parameter in words
 * @param key       of the finding it would narrow most: {@code lift/speed-reach}
 * @param share     of the variance of the judged figure: {@code 83 %}
 * @param settle    what would measure it, or what weighs most in the tests that did
 * @param matters   whether a narrower figure could change a verdict
 */
public record NarrowView(String motor, String parameter, String key, String share, String settle, boolean matters) {
    static NarrowView of(Narrowing narrowing) {
        return new NarrowView(
                narrowing.motor(),
                narrowing.what().words(),
                narrowing.finding().subject() + "/" + narrowing.finding().id(),
                Math.round(100 * narrowing.share()) + " %",
                Sentence.of(narrowing.advice()).text(),
                narrowing.matters());
    }

    /** {@code flux linkage of hub, 83 % of the uncertainty of lift/speed-reach: a spin}. */
    public String text() {
        return parameter + " of " + motor + ", " + share + " of the uncertainty of " + key + ": " + settle;
    }
}
