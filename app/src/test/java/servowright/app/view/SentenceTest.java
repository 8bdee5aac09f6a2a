package servowright.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;
import servowright.app.FrostCart;
import servowright.engine.known.Phrase;
import servowright.engine.quantity.Quantity;

class SentenceTest {
    @Test
    void puts_figures_and_words_where_their_names_stand() {
        Phrase phrase = new Phrase("{who} asks {asked}, gets {gets}", Map.of())
                .with("who", "lift")
                .with("asked", Quantity.of(3200, "rpm"), "rpm")
                .with("gets", FrostCart.measured(2690, 20, "rpm", "spin"));
        Sentence sentence = Sentence.of(phrase);
        assertThat(sentence.text()).isEqualTo("lift asks 3200 rpm, gets 2690 ± 39 rpm");
        assertThat(sentence.pieces().stream().filter(Sentence.Piece::figure).map(Sentence.Piece::text))
                .containsExactly("3200 rpm", "2690 ± 39 rpm");
    }

    @Test
    void leaves_a_brace_that_names_nothing() {
        assertThat(Sentence.of(Phrase.of("a { b {nothing} c")).text()).isEqualTo("a { b {nothing} c");
        assertThat(Sentence.of(Phrase.of("")).isEmpty()).isTrue();
    }

    @Test
    void does_not_read_figures_out_of_somebodys_words() {
        Phrase phrase = new Phrase("{a} {b}", Map.of()).with("a", "{b}").with("b", "x");
        assertThat(Sentence.of(phrase).text()).isEqualTo("{b} x");
    }
}
