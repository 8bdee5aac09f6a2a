package servowright.engine.worksheet.bus;

import servowright.engine.worksheet.Inputs;

/**
 * A hexadecimal text input: blanks, dots and a leading 0x are allowed.
 *
 * @param readable whether it is hexadecimal; an input that was not given is
 * @param digits   its digits without anything else
 */
record Hexadecimal(boolean readable, String digits) {
    static Hexadecimal of(Inputs inputs, String name) {
        String text = inputs.first(name).map(Inputs.Value::text).orElse("");
        return of(text);
    }

    static Hexadecimal of(String text) {
        String digits = text.replaceAll("[\\s.:]", "").replaceFirst("^0[xX]", "");
        boolean hexadecimal = digits.matches("[0-9A-Fa-f]{0,128}");
        return new Hexadecimal(hexadecimal, hexadecimal ? digits : "");
    }

    /** As a number; one longer than eight digits is larger than any identifier. */
    long value() {
        if (digits.isEmpty()) {
            return 0;
        }
        return digits.length() > 8 ? Long.MAX_VALUE : Long.parseLong(digits, 16);
    }

    /** As bytes; an odd number of digits counts as having a zero in front. */
    byte[] bytes() {
        String even = digits.length() % 2 == 0 ? digits : "0" + digits;
        byte[] bytes = new byte[even.length() / 2];
        for (int i = 0; i < bytes.length; i++) {
            bytes[i] = (byte) Integer.parseInt(even.substring(2 * i, 2 * i + 2), 16);
        }
        return bytes;
    }
}
