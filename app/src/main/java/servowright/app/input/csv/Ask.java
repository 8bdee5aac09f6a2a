package servowright.app.input.csv;

import servowright.engine.known.Place;
import servowright.engine.known.Problem;

/** The questions and refusals of the reader. */
final class Ask {
    private Ask() {}

    static Problem missing(String file, String key, String statement, String allowed, String remedy) {
        return new Problem(Problem.Kind.MISSING, new Place(file, 0, key), "", statement, allowed, remedy);
    }

    static Problem unreadable(String file, int line, String statement, String remedy) {
        return new Problem(Problem.Kind.UNREADABLE, new Place(file, line, ""), "", statement, "", remedy);
    }

    static Problem missingFile(String file) {
        return new Problem(
                Problem.Kind.MISSING_FILE,
                new Place(file, 0, ""),
                file,
                "there is no such file",
                "",
                "Check the name.");
    }

    static Problem unknownName(String file, String key, String given, String statement, String known) {
        return new Problem(
                Problem.Kind.UNKNOWN_NAME, new Place(file, 0, key), given, statement, known, "Known: " + known + ".");
    }

    /** No clock at all. */
    static Problem sampleInterval(String file) {
        return missing(
                file,
                "sample_interval",
                "the file has no time column and states no sample interval",
                "a time, or none for the points of a curve",
                "Declare sample_interval, for example 20 us, or none when the rows are points of a curve.");
    }

    /** A column that may be a clock. */
    static Problem timeColumn(String file, int column, String evidence) {
        return missing(
                file,
                "time_column",
                "column " + column + " " + evidence + ", but nothing says that it is time, or in which unit",
                "a column with its unit",
                "Declare time_column, for example time_column: " + column
                        + " [ms], or sample_interval if it is something else.");
    }

    /** Counts with a vertical scale in volts per division. */
    static Problem scale(String file, String channel, String statement) {
        return missing(
                file,
                "scale",
                statement,
                "the worth of one count",
                "Declare scale, for example scale: {" + channel + ": 20 mV}.");
    }

    /** More numbers than may be held. */
    static Problem budget(String file, long rows, int columns, long budget) {
        long every = (rows * columns + budget - 1) / Math.max(1, budget);
        return missing(
                file,
                "every",
                rows + " rows of " + columns + " columns are more than the " + budget
                        + " numbers that are held at once",
                "a window (from, to) or a block mean (every)",
                "Declare every: " + Math.max(2, every) + " for means of that many rows, or from and to.");
    }
}
