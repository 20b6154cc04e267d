package quarterfold.intake;

import java.io.IOException;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import quarterfold.ledger.Settings;

/**
 * The layout that a report was read by before it is learned again, and what of it stays.
 *
 * @param sheet the table that is learned
 * @param own the file's name
 * @param before the layout's text; empty where there is none
 */
record OldLayout(
        Tables tables, String sheet, String own, Settings book, Optional<String> before) {

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
        return OldColumns.keep(old.get(), made, report(made, table), fit);
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
