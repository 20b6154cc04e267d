package quarterfold.intake;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Line;

/**
 * Reads the rows of a file that has several shapes of them: each row by its own shape, which a text
 * in it says, or the row of column names above it. For one thread.
 */
final class ShapedRows implements RowReader {

    /** One shape, and how its rows are read; not before its column names are found. */
    private final class Part {
        private final Layout layout;
        private final Set<String> columns;
        private Optional<Row> view = Optional.empty();
        private Optional<LayoutRows> reader = Optional.empty();
        private Optional<ShapeMark> mark = Optional.empty();

        Part(Layout layout) {
            this.layout = layout;
            columns = layout.columns();
        }

        boolean isTable() {
            return layout.when().isEmpty();
        }

        /** Gives it its columns; names that are there again change nothing. */
        void begin(Row row, Header header) {
            if (view.filter(v -> v.header().names().equals(header.names())).isEmpty()) {
                view = Optional.of(row.header() == header ? row : row.under(header));
                reader = Optional.of(new LayoutRows(layout, terms.with(header), totals));
                mark = Optional.of(new ShapeMark(layout.when(), header));
            }
        }

        boolean fits() {
            return mark.orElseThrow().fits(view.orElseThrow());
        }
    }

    private final Layout layout;
    private final Form.Terms terms;
    private final FileTotals totals = new FileTotals();
    private final List<Part> parts = new ArrayList<>();
    private final List<Part> byText;
    private final Set<String> columns = new HashSet<>();
    private final boolean stacked;
    private boolean begun;
    private Part table;
    private Part current;
    private boolean known;
    private boolean names;
    private Optional<Part> rival = Optional.empty();
    private long stands = -1;

    ShapedRows(Layout layout, Form.Terms terms) {
        this.layout = layout;
        this.terms = terms;
        layout.all().forEach(shape -> parts.add(new Part(shape)));
        parts.forEach(part -> columns.addAll(part.columns));
        byText = parts.stream().filter(p -> !p.isTable()).toList();
        stacked = !layout.tables().isEmpty();
        table = parts.get(0);
        current = table;
    }

    @Override
    public Row stand(Row row) {
        if (row.number() != stands) {
            stands = row.number();
            find(row);
            current.view.ifPresent(Row::begin);
        }
        return current.view.orElse(row);
    }

    private void find(Row row) {
        if (!begun) {
            begun = true;
            parts.get(0).begin(row, terms.header());
            byText.forEach(part -> part.begin(row, header(part.layout)));
        }
        Optional<Header> found = stacked ? names(row) : Optional.empty();
        names = found.isPresent();
        found.ifPresent(header -> table.begin(row, header));
        current = table;
        known = table.isTable();
        for (Part part : byText) {
            if (!names && part.fits()) {
                current = part;
                known = true;
                return;
            }
        }
    }

    /** Of a shape known by a text: its own number of columns, or the columns of the file. */
    private Header header(Layout shape) {
        return layout.shape().headerRow() > 0
                ? terms.header()
                : new Header(Header.numbered(shape.shape().columns()));
    }

    /** Whether the row names the columns of a table, which then begins; that of most columns. */
    private Optional<Header> names(Row row) {
        boolean may = false;
        for (int i = 0; i < row.width() && !may; i++) {
            may = columns.contains(row.bare(i));
        }
        if (!may) {
            return Optional.empty();
        }
        Header header = terms.header().below(row.bare());
        List<Part> fitting =
                parts.stream()
                        .filter(p -> p.isTable() && p.columns.stream().allMatch(header::has))
                        .toList();
        Optional<Part> best = fitting.stream().max(Comparator.comparingInt(p -> p.columns.size()));
        best.ifPresent(part -> table = part);
        rival = fitting.stream().filter(p -> !table.columns.containsAll(p.columns)).findFirst();
        return best.map(part -> header);
    }

    /** Two tables have columns there, neither all of the other's: which begins is not guessed. */
    private void torn(Row row, Part other) {
        row.fault(
                "",
                "found column names that the tables %s and %s of layout %s both fit; expected names that fit one of them alone; give the shape that is meant the columns of the other too, such as fields: {description: Item}, or save each table as a file of its own"
                        .formatted(
                                Problem.quoted(String.join(", ", other.columns)),
                                Problem.quoted(String.join(", ", table.columns)),
                                layout.name()));
    }

    @Override
    public long read(Row row, Output output) {
        Row at = stand(row);
        totals.record();
        if (names) {
            rival.ifPresent(other -> torn(row, other));
            at.header()
                    .repeated(current.layout.named())
                    .forEach(
                            (column, where) ->
                                    row.fault(
                                            column,
                                            "found the name in %s; expected it once, such as one of them renamed"
                                                    .formatted(where)));
            output.setAside(row.number(), "column names");
            return 0;
        }
        LayoutRows reader = current.reader.orElseThrow();
        if (!known) {
            if (!reader.take(at, output)) {
                unknown(at);
            }
            return 0;
        }
        long before = reader.rows();
        Paid paid = new Paid(output);
        long in = reader.read(at, paid);
        totals.add(reader.rows() - before, in, paid.out);
        return in;
    }

    private void unknown(Row row) {
        List<String> columns =
                byText.stream().flatMap(p -> p.layout.when().keySet().stream()).distinct().toList();
        row.fault(
                String.join(", ", columns),
                "found %s; expected a row of a shape that layout %s knows, such as %s; give the layout a shape for it, or set it aside"
                        .formatted(
                                Problem.quoted(
                                        columns.stream()
                                                .map(c -> row.text(row.header().column(c)))
                                                .collect(Collectors.joining(", "))),
                                layout.name(),
                                byText.stream()
                                        .map(p -> Problem.quoted(example(p)))
                                        .collect(Collectors.joining(" or "))));
        totals.spoil();
    }

    private static String example(Part part) {
        return part.layout.when().values().stream()
                .map(texts -> texts.isEmpty() ? "" : texts.get(0))
                .collect(Collectors.joining(", "));
    }

    /** Passes on what a row gives, and adds up what is paid out of it. */
    private static final class Paid implements Output {
        private final Output output;
        private long out;

        Paid(Output output) {
            this.output = output;
        }

        @Override
        public void line(Line line) {
            if (line.profile().kind() == Kind.PAYOUT) {
                out = Math.addExact(out, line.signedMoney().tenThousandths());
            }
            output.line(line);
        }

        @Override
        public void asked(Ask ask) {
            output.asked(ask);
        }

        @Override
        public void setAside(long row, String reason) {
            output.setAside(row, reason);
        }
    }
}
