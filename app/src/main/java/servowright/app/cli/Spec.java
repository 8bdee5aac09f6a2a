package servowright.app.cli;

import java.util.ArrayList;
import picocli.CommandLine;
import picocli.CommandLine.IFactory;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParseResult;

/** Declares verbs without reflection: a start of the program costs less so. */
final class Spec {
    /** Makes lists of words; the maker that picocli brings looks through every jar for the classes of another language. */
    private static final IFactory LISTS = new IFactory() {
        @Override
        public <K> K create(Class<K> wanted) {
            if (wanted.isAssignableFrom(ArrayList.class)) {
                return wanted.cast(new ArrayList<Object>());
            }
            throw new IllegalStateException("verbs are declared in code, not found as " + wanted.getName());
        }
    };

    private Spec() {}

    /** A command line for what was declared here. */
    static CommandLine line(CommandSpec spec) {
        return new CommandLine(spec, LISTS);
    }

    /** A verb with its help; examples are shown under it. */
    static CommandSpec verb(String name, String about, String... examples) {
        return withoutHelp(name, about, examples)
                .addOption(OptionSpec.builder("-h", "--help")
                        .usageHelp(true)
                        .description("Show this help.")
                        .build());
    }

    /** A verb that sees to its help itself. */
    static CommandSpec withoutHelp(String name, String about, String... examples) {
        CommandSpec spec = CommandSpec.wrapWithoutInspection(null, LISTS).name(name);
        spec.usageMessage()
                .description(about)
                .synopsisHeading("")
                .descriptionHeading("%n")
                .parameterListHeading("%n")
                .optionListHeading("%n")
                .commandListHeading("%nVerbs%n")
                .abbreviateSynopsis(false)
                .sortOptions(false);
        if (examples.length > 0) {
            String[] footer = new String[examples.length];
            for (int i = 0; i < examples.length; i++) {
                // A percent sign would be taken as a format.
                footer[i] = "  " + examples[i].replace("%", "%%");
            }
            spec.usageMessage()
                    .footerHeading(examples.length == 1 ? "%nExample%n" : "%nExamples%n")
                    .footer(footer);
        }
        return spec;
    }

    static OptionSpec flag(String name, String about) {
        return OptionSpec.builder(name)
                .arity("0")
                .type(boolean.class)
                .description(about)
                .build();
    }

    static OptionSpec option(String[] names, String label, String about) {
        return OptionSpec.builder(names)
                .arity("1")
                .type(String.class)
                .paramLabel(label)
                .description(about)
                .build();
    }

    static PositionalParamSpec word(int index, String label, String about) {
        return PositionalParamSpec.builder()
                .index(String.valueOf(index))
                .arity("0..1")
                .type(String.class)
                .paramLabel(label)
                .description(about)
                .build();
    }

    static boolean has(ParseResult asked, String option) {
        return asked.matchedOptionValue(option, Boolean.FALSE);
    }

    static String positional(ParseResult asked, int index, String otherwise) {
        return asked.matchedPositionalValue(index, otherwise);
    }
}
