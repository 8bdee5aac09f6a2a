package servowright.app.cli;

import java.util.ArrayList;
import java.util.List;
import servowright.app.view.Sentence;

/** Breaks sentences into lines between words; a figure with its uncertainty and unit stays in one piece. */
final class Wrap {
    /** Below this many columns nothing can be read; lines are then as long as they are. */
    private static final int LEAST = 20;

    private Wrap() {}

    static List<String> lines(String words, int width) {
        return lines(Sentence.of(words), width);
    }

    static List<String> lines(Sentence sentence, int width) {
        int most = Math.max(LEAST, width);
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : words(sentence)) {
            if (!line.isEmpty() && line.length() + 1 + word.length() > most) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.append(line.isEmpty() ? "" : " ").append(word);
        }
        if (!line.isEmpty()) {
            lines.add(line.toString());
        }
        return lines;
    }

    /** What must not be broken: words, and figures with what touches them. */
    private static List<String> words(Sentence sentence) {
        List<String> words = new ArrayList<>();
        StringBuilder word = new StringBuilder();
        for (Sentence.Piece piece : sentence.pieces()) {
            if (piece.figure()) {
                word.append(safe(piece.text()));
                continue;
            }
            for (int i = 0; i < piece.text().length(); i++) {
                char c = piece.text().charAt(i);
                if (c == ' ' || c == '\n' || c == '\t') {
                    flush(word, words);
                } else {
                    word.append(Character.isISOControl(c) ? '\ufffd' : c);
                }
            }
        }
        flush(word, words);
        return words;
    }

    /** Control characters from somebody's files must not reach a terminal. */
    static String safe(String text) {
        StringBuilder safe = new StringBuilder(text.length());
        text.chars().forEach(c -> safe.append(Character.isISOControl(c) ? '\ufffd' : (char) c));
        return safe.toString();
    }

    private static void flush(StringBuilder word, List<String> words) {
        if (!word.isEmpty()) {
            words.add(word.toString());
            word.setLength(0);
        }
    }
}
