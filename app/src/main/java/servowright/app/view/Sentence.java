package servowright.app.view;

import java.util.ArrayList;
import java.util.List;
import servowright.engine.known.Phrase;

/**
 * Words with figures in them, ready to be shown.
 *
 * @param pieces in their order; a figure is one piece and is never broken over two lines
 */
public record Sentence(List<Piece> pieces) {
    /**
     * Part of a sentence.
     *
     * @param figure whether it is a figure
     */
    public record Piece(String text, boolean figure) {}

    public static final Sentence EMPTY = new Sentence(List.of());

    public Sentence {
        pieces = List.copyOf(pieces);
    }

    /** Words alone. */
    public static Sentence of(String words) {
        return words.isEmpty() ? EMPTY : new Sentence(List.of(new Piece(words, false)));
    }

    /** The phrase with digits for its figures. */
    public static Sentence of(Phrase phrase) {
        return of(phrase, false);
    }

    /** The phrase with digits for its figures; {@code full} keeps those of a worksheet. */
    static Sentence of(Phrase phrase, boolean full) {
        List<Piece> pieces = new ArrayList<>();
        String rest = phrase.template();
        int open = rest.indexOf('{');
        while (open >= 0) {
            int close = rest.indexOf('}', open);
            Phrase.Part part = close < 0 ? null : phrase.figures().get(rest.substring(open + 1, close));
            int end = part == null ? open + 1 : close + 1;
            add(pieces, rest.substring(0, part == null ? end : open), false);
            if (part instanceof Phrase.Word word) {
                add(pieces, word.text(), false);
            } else if (part instanceof Phrase.Figure figure) {
                add(pieces, figure(figure, full).text(), true);
            }
            rest = rest.substring(end);
            open = rest.indexOf('{');
        }
        add(pieces, rest, false);
        return new Sentence(pieces);
    }

    private static FigureText figure(Phrase.Figure figure, boolean full) {
        return full ? FigureText.full(figure.value(), figure.unit()) : FigureText.of(figure.value(), figure.unit());
    }

    private static void add(List<Piece> pieces, String text, boolean figure) {
        if (!text.isEmpty()) {
            pieces.add(new Piece(text, figure));
        }
    }

    public boolean isEmpty() {
        return pieces.isEmpty();
    }

    /** This sentence and another, with words between them where both say something. */
    public Sentence then(String between, Sentence other) {
        if (isEmpty() || other.isEmpty()) {
            return isEmpty() ? other : this;
        }
        List<Piece> all = new ArrayList<>(pieces);
        all.add(new Piece(between, false));
        all.addAll(other.pieces);
        return new Sentence(all);
    }

    /** As one line. */
    public String text() {
        StringBuilder all = new StringBuilder();
        pieces.forEach(p -> all.append(p.text()));
        return all.toString();
    }
}
