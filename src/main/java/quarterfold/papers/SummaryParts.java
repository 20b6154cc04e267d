package quarterfold.papers;

import com.lowagie.text.Element;
import com.lowagie.text.Font;
import com.lowagie.text.Rectangle;
import com.lowagie.text.pdf.PdfPCell;
import com.lowagie.text.pdf.PdfPTable;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import quarterfold.ledger.SetAside;
import quarterfold.ledger.Source;
import quarterfold.money.Amount;
import quarterfold.period.Adjustment;
import quarterfold.period.BoxFigure;
import quarterfold.period.Pack;
import quarterfold.treatment.Query;

/** What the return rests on, as the summary's tables. Long lists are cut, and say so. */
final class SummaryParts {

    /** The most queries, and the most kinds of rows set aside, that the summary lists. */
    static final int MOST = 40;

    private static final float[] FEED_WIDTHS = {7, 1.8f, 2.6f};

    private final PdfLook look;
    private final Pack pack;
    private final Tally tally;

    SummaryParts(PdfLook look, Pack pack, Tally tally) {
        this.look = look;
        this.pack = pack;
        this.tally = tally;
    }

    /** A heading, then a table for each box, which a page does not break where it need not. */
    List<PdfPTable> feeds() {
        List<PdfPTable> tables = new ArrayList<>();
        PdfPTable heading =
                look.section(
                        "What feeds each box",
                        "Amounts before the box's one rounding; a refund or credit is negative.",
                        FEED_WIDTHS,
                        "Treatment",
                        ">Entries",
                        ">Amount");
        heading.setHeaderRows(0);
        tables.add(heading);
        for (BoxFigure figure : pack.vatReturn().boxes()) {
            if (!figure.box().isComputed()) {
                tables.add(feeds(figure));
            }
        }
        return tables;
    }

    private PdfPTable feeds(BoxFigure figure) {
        Map<Tally.How, Tally.Feed> feeds = tally.feeds(figure.box().id());
        PdfPTable table = look.table(FEED_WIDTHS);
        table.setSpacingBefore(5);
        table.setKeepTogether(true);
        String name = "Box " + figure.box().id() + "  " + figure.box().label();
        PdfPCell head = look.left(name, look.bold);
        head.setColspan(feeds.isEmpty() ? 2 : 3);
        table.addCell(head);
        if (feeds.isEmpty()) {
            table.addCell(look.right("nothing", look.quiet));
            return table;
        }
        table.setHeaderRows(1);
        boolean pence =
                feeds.values().stream().allMatch(f -> f.amount().tenThousandths() % 100 == 0);
        long entries = 0;
        for (Map.Entry<Tally.How, Tally.Feed> feed : feeds.entrySet()) {
            table.addCell(indented(feed.getKey().words(), look.plain));
            table.addCell(look.right(Words.count(feed.getValue().entries()), look.plain));
            table.addCell(look.right(Words.exact(feed.getValue().amount(), pence), look.plain));
            entries += feed.getValue().entries();
        }
        table.addCell(indented("Together", look.quiet));
        table.addCell(look.right(Words.count(entries), look.quiet));
        table.addCell(look.right(Words.exact(figure.exact(), pence), look.bold));
        return table;
    }

    private PdfPCell indented(String text, Font font) {
        PdfPCell cell = look.left(text, font);
        cell.setPaddingLeft(12);
        return cell;
    }

    /** What the return took up beside its entries, each with its working. */
    PdfPTable adjustments() {
        PdfPTable table =
                look.section(
                        "Adjustments",
                        "Figures worked out over the whole period or year.",
                        new float[] {3.4f, 7.1f, 2.4f},
                        "What, and about what",
                        "How it was worked out",
                        ">Adds to boxes");
        for (Adjustment adjustment : pack.vatReturn().adjustments()) {
            table.addCell(
                    look.twoLines(Words.treatment(adjustment.treatment()), adjustment.about()));
            table.addCell(look.twoLines(adjustment.why(), adjustment.authority()));
            table.addCell(look.right(adds(adjustment), look.plain));
        }
        return table;
    }

    private static String adds(Adjustment adjustment) {
        return adjustment.boxes().isEmpty()
                ? "nothing"
                : new TreeMap<>(adjustment.boxes())
                        .entrySet().stream()
                                .map(b -> b.getKey() + ": " + Words.money(b.getValue()))
                                .collect(Collectors.joining("\n"));
    }

    PdfPTable queries() {
        List<Query> queries = pack.vatReturn().openQueries();
        Comparator<Query> byMoney = Comparator.comparing(q -> q.money().abs());
        List<Query> listed =
                queries.size() <= MOST
                        ? queries
                        : queries.stream().sorted(byMoney.reversed()).limit(MOST).toList();
        PdfPTable table =
                look.section(
                        "Open queries",
                        queriesNote(queries.size()),
                        new float[] {3.4f, 7.6f, 1.9f},
                        "Where, and the query's name",
                        "Question",
                        ">At stake");
        for (Query query : listed) {
            table.addCell(look.twoLines(query.place(), query.id()));
            table.addCell(look.left(query.question(), look.plain));
            table.addCell(look.right(Words.money(query.money()), look.plain));
        }
        return table;
    }

    private static String queriesNote(int queries) {
        if (queries == 0) {
            return "None.";
        }
        String all =
                Words.of(queries, "query is", "queries are")
                        + " open; each waits for a person's answer.";
        return queries <= MOST
                ? all
                : all
                        + " These are the "
                        + MOST
                        + " with the most money at stake; "
                        + Words.of(queries - MOST, "more is", "more are")
                        + " in the workbook.";
    }

    PdfPTable inNoBox() {
        Map<Tally.How, Tally.Feed> feeds = tally.inNoBox();
        PdfPTable table =
                look.section(
                        "Entries in no box",
                        feeds.isEmpty()
                                ? "None."
                                : "Money that moved and is no part of the return.",
                        FEED_WIDTHS,
                        "Treatment",
                        ">Entries",
                        ">Money in or out");
        feeds.forEach(
                (how, feed) -> {
                    table.addCell(look.left(how.words(), look.plain));
                    table.addCell(look.right(Words.count(feed.entries()), look.plain));
                    table.addCell(look.right(Words.money(feed.amount()), look.plain));
                });
        return table;
    }

    PdfPTable setAside() {
        Map<Long, String> files =
                pack.sources().stream().collect(Collectors.toMap(Source::id, Source::name));
        Map<Long, Map<String, Long>> kinds = new TreeMap<>();
        for (SetAside row : pack.setAside()) {
            kinds.computeIfAbsent(row.source(), s -> new TreeMap<>())
                    .merge(row.reason(), 1L, Long::sum);
        }
        long all = kinds.values().stream().mapToLong(Map::size).sum();
        PdfPTable table =
                look.section(
                        "Rows not used",
                        setAsideNote(all),
                        new float[] {3.4f, 7.6f, 1.9f},
                        "File",
                        "Why",
                        ">Rows");
        kinds.entrySet().stream()
                .flatMap(
                        s -> s.getValue().entrySet().stream().map(r -> cells(files, s.getKey(), r)))
                .limit(MOST)
                .forEach(cells -> cells.forEach(table::addCell));
        return table;
    }

    private List<PdfPCell> cells(
            Map<Long, String> files, long source, Map.Entry<String, Long> rows) {
        return List.of(
                look.left(files.getOrDefault(source, "source " + source), look.plain),
                look.left(rows.getKey(), look.plain),
                look.right(Words.count(rows.getValue()), look.plain));
    }

    private String setAsideNote(long kinds) {
        int rows = pack.setAside().size();
        if (rows == 0) {
            return "Every row of the files made an entry.";
        }
        String all = Words.of(rows, "row", "rows") + " of the files made no entry.";
        return kinds <= MOST
                ? all
                : all + " The first " + MOST + " reasons are here; every row is in the workbook.";
    }

    PdfPTable sources() {
        PdfPTable table =
                look.section(
                        "Sources",
                        "The files with an entry in the period. Their digests are in the workbook.",
                        new float[] {4.6f, 1.5f, 1.5f, 1.5f, 2.3f, 2.3f, 1.8f},
                        "File and what it was read as",
                        ">Rows read",
                        ">Entered",
                        ">Set aside",
                        ">Money in the file",
                        ">Money entered",
                        ">Tie?");
        for (Source source : pack.sources()) {
            boolean ties = source.moneyIn().equals(source.moneyEntered());
            table.addCell(look.twoLines(source.name(), source.layout()));
            Stream.of(source.rowsRead(), source.rowsEntered(), source.rowsSetAside())
                    .forEach(n -> table.addCell(look.right(Words.count(n), look.plain)));
            for (Amount money : List.of(source.moneyIn(), source.moneyEntered())) {
                table.addCell(look.right(Words.money(money), look.plain));
            }
            table.addCell(look.right(ties ? "ties" : "DOES NOT", ties ? look.plain : look.bold));
        }
        return table;
    }

    PdfPTable signatures() {
        PdfPTable table = look.table(1.6f, 5, 0.4f, 0.9f, 2.4f);
        table.setSpacingBefore(26);
        table.setKeepTogether(true);
        for (String who : List.of("Prepared by", "Checked by")) {
            table.addCell(line(who, false));
            table.addCell(line("", true));
            table.addCell(line("", false));
            table.addCell(line("Date", false));
            table.addCell(line("", true));
        }
        return table;
    }

    private PdfPCell line(String text, boolean toWriteOn) {
        PdfPCell cell = look.left(text, look.plain);
        cell.setFixedHeight(34);
        cell.setVerticalAlignment(Element.ALIGN_BOTTOM);
        cell.setBorder(toWriteOn ? Rectangle.BOTTOM : Rectangle.NO_BORDER);
        return cell;
    }
}
