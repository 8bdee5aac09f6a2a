package servowright.engine.known;

import org.jspecify.annotations.Nullable;

/**
 * One independent source of uncertainty.
 *
 * @param id               what it is, unique within one assessment, for example {@code machine.yaml:14}
 * @param group            sources of one fit share a group, since they share its residual variance; otherwise the id
 * @param degreesOfFreedom of its estimate; infinite for limits and for what is taken as known
 */
public record Source(String id, String group, double degreesOfFreedom) implements Comparable<Source> {
    public Source {
        if (!(degreesOfFreedom > 0)) {
            throw new IllegalArgumentException(
                    "degrees of freedom of " + id + " must be above 0, was " + degreesOfFreedom);
        }
    }

    /** A source that stands alone, known to be as large as it is. */
    public static Source of(String id) {
        return new Source(id, id, Double.POSITIVE_INFINITY);
    }

    /** A source that stands alone, estimated with the given degrees of freedom. */
    public static Source of(String id, double degreesOfFreedom) {
        return new Source(id, id, degreesOfFreedom);
    }

    /** By its name, which is unique within one assessment. */
    @Override
    public int hashCode() {
        return id.hashCode();
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return this == other
                || (other instanceof Source source
                        && id.equals(source.id)
                        && group.equals(source.group)
                        && degreesOfFreedom == source.degreesOfFreedom);
    }

    @Override
    public int compareTo(Source other) {
        return id.compareTo(other.id);
    }
}
