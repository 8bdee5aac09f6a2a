package servowright.engine.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class SpellingTest {
    private static final List<String> KEYS = List.of("resistance", "inductance", "slots", "magnets");

    @Test
    void finds_the_word_that_was_meant() {
        assertThat(Spelling.nearest("resistence", KEYS)).contains("resistance");
        assertThat(Spelling.nearest("Slot", KEYS)).contains("slots");
        assertThat(Spelling.nearest("magn", KEYS)).contains("magnets");
        assertThat(Spelling.nearest("voltage", KEYS)).isEmpty();
    }

    /** Kitten to sitting: the usual textbook example of three edits (Levenshtein); a swap counts once. */
    @Test
    void counts_edits() {
        assertThat(Spelling.distance("kitten", "sitting")).isEqualTo(3);
        assertThat(Spelling.distance("rmp", "rpm")).isEqualTo(1);
        assertThat(Spelling.distance("", "abc")).isEqualTo(3);
    }
}
