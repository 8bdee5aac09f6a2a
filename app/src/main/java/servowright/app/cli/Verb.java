package servowright.app.cli;

import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** One verb of the command line. */
interface Verb {
    /** What is typed to get it. */
    String name();

    /** Its name, options and help. */
    CommandSpec spec();

    /** Does it. */
    ExitCode run(ParseResult asked, Screen screen);
}
