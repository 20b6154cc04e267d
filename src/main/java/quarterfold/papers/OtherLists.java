package quarterfold.papers;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import quarterfold.ledger.SetAside;
import quarterfold.ledger.Source;
import quarterfold.money.Amount;
import quarterfold.period.Pack;
import quarterfold.treatment.Query;

/**
 * The lists beside the entries: open queries, the files with their control totals, rows set aside.
 */
final class OtherLists {

    private OtherLists() {}

    static void queries(Sheets sheets, Pack pack) {
        List<Query> queries =
                Stream.of(pack.vatReturn().openQueries(), pack.vatReturn().setAsideQueries())
                        .flatMap(List::stream)
                        .toList();
        ListSheet.Heading heading =
                new ListSheet.Heading(
                        "Queries",
                        "Each waits for a person's answer, or a decision left it as it is; the"
                                + " money is the VAT or the difference at stake.",
                        "No query was asked.",
                        30);
        List<Column<Query>> columns =
                List.of(
                        Column.text("Query", 34, Query::id),
                        Column.of(
                                "Entry",
                                9,
                                q ->
                                        q.entry().isPresent()
                                                ? new Value.Whole(q.entry().getAsLong())
                                                : new Value.Blank()),
                        Column.text("Where", 34, Query::place),
                        Column.text("Question", 84, Query::question),
                        Column.text("Answer", 44, q -> q.isOpen() ? "open" : q.answer()),
                        Column.<Query>money("Money at stake", 13, Query::money).withTotal());
        Amount total = queries.stream().map(Query::money).reduce(Amount.ZERO, Amount::plus);
        fill(new ListSheet<>(sheets, heading, columns, queries.size(), (p, c) -> total), queries);
    }

    static void sources(Sheets sheets, Pack pack) {
        ListSheet.Heading heading =
                new ListSheet.Heading(
                        "Sources",
                        "Every file with an entry in the period: rows read are rows entered and"
                                + " rows set aside, and the money entered is the money in the file.",
                        "No file has an entry in the period.",
                        30);
        List<Column<Source>> columns =
                List.of(
                        Column.text("File", 40, Source::name),
                        Column.text("Read as", 20, Source::layout),
                        Column.count("Rows read", 10, Source::rowsRead),
                        Column.count("Rows entered", 10, Source::rowsEntered),
                        Column.count("Rows set aside", 10, Source::rowsSetAside),
                        Column.count("Entries", 10, Source::entries),
                        Column.money("Money in the file", 15, Source::moneyIn),
                        Column.money("Money entered", 15, Source::moneyEntered),
                        Column.of("Do they tie?", 10, OtherLists::ties),
                        Column.of("First date", 14, s -> date(s, Source.Dates::first)),
                        Column.of("Last date", 14, s -> date(s, Source.Dates::last)),
                        Column.text("SHA-256 of the file", 68, Source::sha256));
        fill(
                new ListSheet<>(
                        sheets, heading, columns, pack.sources().size(), (p, c) -> Amount.ZERO),
                pack.sources());
    }

    static void setAside(Sheets sheets, Pack pack) {
        Map<Long, String> files =
                pack.sources().stream().collect(Collectors.toMap(Source::id, Source::name));
        ListSheet.Heading heading =
                new ListSheet.Heading(
                        "Set aside",
                        "Rows of those files that made no entry, and why.",
                        "No row was set aside.",
                        30);
        List<Column<SetAside>> columns =
                List.of(
                        Column.text(
                                "File",
                                40,
                                r -> files.getOrDefault(r.source(), "source " + r.source())),
                        Column.whole("Row", 10, SetAside::row),
                        Column.text("Why", 110, SetAside::reason));
        fill(
                new ListSheet<>(
                        sheets, heading, columns, pack.setAside().size(), (p, c) -> Amount.ZERO),
                pack.setAside());
    }

    private static Value date(Source source, Function<Source.Dates, java.time.LocalDate> which) {
        return source.dates()
                .<Value>map(d -> new Value.Day(which.apply(d)))
                .orElse(new Value.Blank());
    }

    private static Value ties(Source source) {
        return new Value.Text(
                source.moneyIn().equals(source.moneyEntered()) ? "ties" : "DOES NOT TIE");
    }

    private static <T> void fill(ListSheet<T> list, List<T> rows) {
        rows.forEach(list::add);
    }
}
