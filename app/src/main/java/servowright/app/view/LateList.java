package servowright.app.view;

import java.util.AbstractList;
import java.util.List;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * A list that is made when it is first looked into: a screen shows a small part of what an assessment could tell, and
 * should not wait for the rest.
 */
final class LateList<T> extends AbstractList<T> {
    private final Supplier<List<T>> maker;
    private volatile @Nullable List<T> made;

    private LateList(Supplier<List<T>> maker) {
        this.maker = maker;
    }

    /** The list that {@code maker} gives; it is asked once, unless two threads look at the same moment. */
    static <T> List<T> of(Supplier<List<T>> maker) {
        return new LateList<>(maker);
    }

    /** An unmodifiable list of the same elements; one that is not made yet stays so. */
    static <T> List<T> copyOf(List<T> list) {
        return list instanceof LateList ? list : List.copyOf(list);
    }

    @Override
    public T get(int index) {
        return made().get(index);
    }

    @Override
    public int size() {
        return made().size();
    }

    private List<T> made() {
        @Nullable List<T> all = made;
        if (all == null) {
            all = List.copyOf(maker.get());
            made = all;
        }
        return all;
    }
}
