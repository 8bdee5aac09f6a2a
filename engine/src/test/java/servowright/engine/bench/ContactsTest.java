package servowright.engine.bench;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import servowright.engine.bench.ChannelRole.RotorAxis;
import servowright.engine.bench.ChannelRole.Signal;

class ContactsTest {
    @ParameterizedTest
    @CsvSource({
        "A to B, A to B, TWO_TERMINALS, false",
        "B to A, A to B, TWO_TERMINALS, true",
        "W-U, C to A, TWO_TERMINALS, false",
        "1 to 3, C to A, TWO_TERMINALS, true",
        "A to BC, A to BC, ONE_AGAINST_TWO, false",
        "b to ca, B to AC, ONE_AGAINST_TWO, false",
        "A to star, A to star, PHASE, false",
        "'current, C to star', C to star, PHASE, false"
    })
    void reads_where_it_was_contacted(String text, String words, String hookUp, boolean reversed) {
        Contacts contacts = Contacts.parse(text).orElseThrow();
        assertThat(contacts.words()).isEqualTo(words);
        assertThat(contacts.hookUp()).hasToString(hookUp);
        assertThat(contacts.reversed()).isEqualTo(reversed);
    }

    @ParameterizedTest
    @CsvSource({"''", "current", "A to A", "A to AB", "A to BB", "A to D", "voltage of the supply"})
    void takes_nothing_else_for_contacts(String text) {
        assertThat(Contacts.parse(text)).isEmpty();
    }

    @Test
    void reads_what_a_channel_shows() {
        ChannelRole shunt = ChannelRole.parse("shunt, A to BC, d axis");
        assertThat(shunt.signal()).isEqualTo(Signal.SHUNT);
        assertThat(shunt.axis()).contains(RotorAxis.D);
        assertThat(shunt.contacts()).isPresent();
        assertThat(ChannelRole.parse("A to B").signal()).isEqualTo(Signal.VOLTAGE);
        assertThat(ChannelRole.parse("Current").signal()).isEqualTo(Signal.CURRENT);
    }
}
