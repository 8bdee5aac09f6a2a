package servowright.app.reference;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import servowright.app.input.CaseFolder;
import servowright.app.view.CaseView;
import servowright.engine.worksheet.Case;
import servowright.engine.worksheet.CaseCheck;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Worksheet;
import servowright.engine.worksheet.Worksheets;

/**
 * Every page of docs/formulas and docs/validation.
 *
 * @param pages text by the name of its file below docs, in the order of the names
 */
public record ReferencePages(Map<String, String> pages) {
    /** The folders below docs that hold these pages and nothing else. */
    public static final List<String> FOLDERS = List.of("formulas", "validation");

    /** Says how a page is written anew. */
    static final String HEAD = "<!-- Written by the worksheets and cases themselves. After a change of either:"
            + " ./servowright --version && java -cp app/target/servowright.jar"
            + " servowright.app.reference.ReferencePages -->\n";

    public ReferencePages {
        pages = Collections.unmodifiableMap(new TreeMap<>(pages));
    }

    /** The pages that worksheets and these cases give. */
    public static ReferencePages of(List<Case> cases) {
        Map<String, List<Case>> bySheet =
                cases.stream().collect(Collectors.groupingBy(Case::sheet, LinkedHashMap::new, Collectors.toList()));
        Map<String, String> pages = new TreeMap<>();
        Map<Declaration, List<CaseView>> views = new LinkedHashMap<>();
        for (Worksheet sheet : Worksheets.all()) {
            Declaration declaration = sheet.declaration();
            List<Case> own = bySheet.getOrDefault(declaration.name(), List.of());
            List<CaseView> checked =
                    own.stream().map(CaseCheck::of).map(CaseView::of).toList();
            views.put(declaration, checked);
            String file = declaration.name() + ".md";
            pages.put("formulas/" + file, FormulaPage.of(declaration, Formulas.of(sheet, own)));
            pages.put("validation/" + file, ValidationPage.of(declaration.title(), checked));
        }
        pages.put("formulas/README.md", formulas());
        pages.put("validation/README.md", validation(views));
        return new ReferencePages(pages);
    }

    /** Writes the pages below the docs of the project in the folder named, and removes those no longer written. */
    public static void main(String[] words) throws IOException {
        Path root = Path.of(words.length > 0 ? words[0] : ".");
        CaseFolder folder = CaseFolder.read(root.resolve("cases"));
        if (!folder.problems().isEmpty()) {
            throw new IOException(folder.problems().get(0).place().text() + " "
                    + folder.problems().get(0).text());
        }
        of(folder.cases()).write(root.resolve("docs"));
    }

    private void write(Path docs) throws IOException {
        for (String folder : FOLDERS) {
            Files.createDirectories(docs.resolve(folder));
            try (Stream<Path> old = Files.list(docs.resolve(folder))) {
                for (Path file : old.toList()) {
                    if (!pages.containsKey(folder + "/" + file.getFileName())) {
                        Files.delete(file);
                    }
                }
            }
        }
        for (Map.Entry<String, String> page : pages.entrySet()) {
            Files.writeString(docs.resolve(page.getKey()), page.getValue());
        }
    }

    private static String formulas() {
        StringBuilder page = new StringBuilder("# Formulas\n\n" + HEAD + "\n");
        page.append(
                "What each worksheet takes and gives, its formulas with symbols and units, and where they come from.\n\n");
        Worksheets.all().stream()
                .map(Worksheet::declaration)
                .forEach(sheet -> page.append("- [")
                        .append(sheet.name())
                        .append("](")
                        .append(sheet.name())
                        .append(".md): ")
                        .append(sheet.title())
                        .append("\n"));
        return page.toString();
    }

    private static String validation(Map<Declaration, List<CaseView>> views) {
        List<CaseView> all = new ArrayList<>();
        Table table = Table.of("worksheet", "cases", "values", "outside tolerance");
        views.forEach((sheet, cases) -> {
            all.addAll(cases);
            String link = "[" + sheet.name() + "](" + sheet.name() + ".md)";
            long values = cases.stream().mapToLong(c -> c.lines().size()).sum();
            table.line(link, "" + cases.size(), "" + values, "" + ValidationPage.outside(cases));
        });
        Table kinds = Table.of("kind", "cases", "the answer is");
        for (Case.Kind kind : Case.Kind.values()) {
            long count = all.stream().filter(c -> c.kind().equals(kind.word())).count();
            kinds.line(kind.word(), "" + count, kind.meaning());
        }
        return "# Validation\n\n" + HEAD + "\nEvery worked case beside what the worksheets compute. "
                + ValidationPage.summary(all) + "\n\n" + table.text() + "\n" + kinds.text();
    }
}
