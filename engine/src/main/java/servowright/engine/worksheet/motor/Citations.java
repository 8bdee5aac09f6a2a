package servowright.engine.worksheet.motor;

/** Sources that several lines share. */
final class Citations {
    static final String POWER_BALANCE =
            "power balance T ω = 3/2 e i for sinusoidal back-EMF; dq form as Krause, Wasynczuk, Sudhoff, Pekarek, Analysis of"
                    + " Electric Machinery and Drive Systems, 3rd ed. 2013, ch. 4 (recalled)";
    static final String MEAN_OF_LOGS =
            "several figures: weighted least squares on the logarithms (weights 1/u², JCGM 100:2008, 4.3 for limits)";

    private Citations() {}
}
