package quarterfold.intake;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import quarterfold.ledger.Settings;

/**
 * The layout that a report was read by before it is learned again, and what of it stays.
 *
 * @param sheet the table that is learned
 * @param own the file's name
 * @param before the layout's text; empty where there is none
 * @param answered the questions of the report that a person answered, by their ids
 */
record OldLayout(
        Tables tables,
        String sheet,
        String own,
        Settings book,
        Optional<String> before,
        Set<String> answered) {

    /** What the layout says to questions that a report may leave open, by their ids. */
    static Map<String, String> answers(String name, Optional<String> before) {
        Problems problems = new Problems();
        Optional<Layout> read = before.map(b -> LayoutReader.read(name + ".yaml", b, problems));
        if (read.isEmpty() || !problems.none()) {
            return Map.of();
        }
        Layout old = read.get();
        Map<String, String> answers = new HashMap<>();
        answers.put("dates", old.dates().pattern());
        answers.put("date", old.fields().getOrDefault(Field.DATE, ""));
        answers.put("decimal-mark", String.valueOf(old.numbers().decimal()));
        answers.put("unit", old.numbers().minor() > 0 ? "minor" : "main");
        old.mark()
                .map(Layout.Mark::negative)
                .filter(texts -> texts.size() == 1)
                .ifPresent(texts -> answers.put("negative", texts.iterator().next()));
        if (old.rules().size() == 1 && old.rules().get(0).when().isEmpty()) {
            old.rules().get(0).enter().stream()
                    .findFirst()
                    .filter(e -> old.rules().get(0).ask().isEmpty())
                    .ifPresent(e -> answers.put("rows", e.kind().code()));
        }
        return answers;
    }

    /** A layout for reports with the columns of both. */
    OldColumns.Kept columns(Layout made, TableFinder.Found table) throws BadFile, IOException {
        Problems problems = new Problems();
        String file = made.name() + ".yaml";
        Optional<Layout> old = before.map(text -> LayoutReader.read(file, text, problems));
        if (old.isEmpty() || !problems.none()) {
            return new OldColumns.Kept(made, List.of());
        }
        Trial first = trial(made);
        HandWritten.Fit fit =
                layout -> {
                    Trial trial = trial(layout);
                    return first.told().containsAll(trial.told())
                            && trial.money().equals(first.money());
                };
        HandWritten.Fit reads =
                layout -> {
                    Trial trial = trial(layout);
                    return first.told().containsAll(trial.told()) && trial.entries() > 0;
                };
        OldColumns.Report report = report(made, table);
        Layout blanks = withBlanks(old.get(), made, fit);
        OldColumns.Kept kept = OldColumns.keep(old.get(), blanks, report, fit);
        OldColumns.Kept all = OldOthers.with(old.get(), kept, report.header(), reads, answered);
        List<String> notes = new ArrayList<>(OldWays.notes(old.get(), made, book.currency()));
        notes.addAll(all.notes());
        return new OldColumns.Kept(all.layout(), notes);
    }

    /** With the texts for empty cells that other months have. */
    private static Layout withBlanks(Layout old, Layout made, HandWritten.Fit fit)
            throws BadFile, IOException {
        Set<String> blanks = new TreeSet<>(made.shape().blanks());
        blanks.addAll(old.shape().blanks());
        Layout with = made.with(blanks, made.shapes());
        boolean keeps =
                OldColumns.fits(old, made)
                        && blanks.size() > made.shape().blanks().size()
                        && OldColumns.isSound(with, fit);
        return keeps ? with : made;
    }

    private OldColumns.Report report(Layout made, TableFinder.Found table)
            throws BadFile, IOException {
        Header header = Trial.header(tables, made, sheet);
        return new OldColumns.Report() {
            @Override
            public Header header() {
                return header;
            }

            @Override
            public Set<String> texts(int column) {
                Set<String> texts = new LinkedHashSet<>();
                table.body().forEach(line -> texts.add(line.cell(column)));
                return texts;
            }
        };
    }

    private Trial trial(Layout layout) throws BadFile, IOException {
        return Trial.run(tables, own, layout, sheet, book, line -> {});
    }

    private HandWritten.Fit fit(Layout read) throws BadFile, IOException {
        List<String> told = trial(read).told();
        return layout -> told.containsAll(trial(layout).told());
    }

    /** The rules that stay. */
    OldRules rules(Layout read, String yaml) throws BadFile, IOException {
        return before.isEmpty()
                ? OldRules.NONE
                : OldRules.keep(read.name() + ".yaml", before.get(), yaml, fit(read));
    }

    /** What else stays: what the file reads with no worse than without. */
    Optional<HandWritten.Kept> keep(Layout read, String yaml) throws BadFile, IOException {
        return before.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        HandWritten.keep(read.name() + ".yaml", before.get(), yaml, fit(read)));
    }
}
