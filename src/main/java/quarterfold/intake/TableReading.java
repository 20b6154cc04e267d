package quarterfold.intake;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** A table of a file, read by a layout or as a plain sheet. */
final class TableReading implements Reading {
    static final String ENCODING = "encoding-found";

    private final Tables tables;
    private final String name;
    private final Form form;
    private final String table;
    private final Payouts payouts = new Payouts();
    private final Asked asked = new Asked();
    private final ToSettlements toSettlements = new ToSettlements(payouts);
    private final Optional<RowReader> reader;
    private final Rows rows;
    private final Row row;
    private final int documents;
    private final RowMarks marks;
    private final Map<Header, RowMarks> marksOfOthers = new HashMap<>();
    private Row at;
    private boolean any;

    private TableReading(Tables tables, Brought file, Recognition.Found found)
            throws BadFile, IOException {
        this.tables = tables;
        this.name = file.name();
        this.form = found.form();
        this.table = found.table();
        Problems problems = file.problems();
        reader = Recognition.reader(tables, name, found, file.book(), payouts, asked, problems);
        rows = AboveRows.of(tables, found.table(), form);
        Tables.header(rows, form.shape().headerRow());
        row = new Row(rows, found.header(), form.shape().blanks(), problems);
        at = row;
        documents = form.documents().map(found.header()::column).orElse(-1);
        marks = new RowMarks(found.header(), ignored());
    }

    /**
     * Opens a file that holds tables; what is wrong with its header becomes problems, and then it
     * has no rows.
     *
     * @param forms those it may have; found from its header among all where there are none
     */
    static Reading open(Brought file, List<Form> forms) throws BadFile, IOException {
        Tables tables = Tables.open(file.path(), file.name());
        TableReading reading = null;
        try {
            Recognition.Found found =
                    forms.isEmpty()
                            ? Recognition.recognise(tables, file.name(), file.layouts())
                            : Recognition.as(tables, file.name(), forms, file.problems());
            reading = new TableReading(tables, file, found);
            return reading;
        } finally {
            if (reading == null) {
                tables.close();
            }
        }
    }

    /** A payout stated above the rows is that of the export, and says nothing of a row. */
    private Set<String> ignored() {
        Set<String> ignored = new HashSet<>(form.repeats().ignored());
        if (form instanceof Layout layout) {
            layout.payoutColumn()
                    .filter(p -> layout.above().stream().anyMatch(l -> l.names().contains(p)))
                    .ifPresent(ignored::add);
        }
        return ignored;
    }

    @Override
    public String layout() {
        return form.name();
    }

    @Override
    public boolean next() throws BadFile {
        boolean more = reader.isPresent() && row.next();
        any |= more;
        if (more) {
            at = reader.orElseThrow().stand(row);
        }
        return more;
    }

    @Override
    public long read(RowReader.Output output) {
        long money = reader.orElseThrow().read(row, toSettlements.and(output));
        String document = row.text(documents);
        if (!document.isEmpty()) {
            output.attach(
                    new Named(
                            row.number(),
                            rows.place(documents),
                            row.header().name(documents),
                            document));
        }
        return money;
    }

    @Override
    public RepeatRule repeats() {
        return form.repeats();
    }

    @Override
    public RowMark mark() {
        return at == row
                ? marks.of(row)
                : marksOfOthers
                        .computeIfAbsent(at.header(), h -> new RowMarks(h, ignored()))
                        .of(at);
    }

    @Override
    public void fault(String fault) {
        row.fault("", fault);
    }

    @Override
    public void finish() throws BadFile {
        if (!any) {
            throw new BadFile(
                    name, "found a header and no rows; expected at least one row below the header");
        }
        Optional<String> merged = rows.look().mergedRows(form.shape().headerRow());
        if (merged.isPresent()) {
            throw new BadFile(
                    "%s:%s!%s".formatted(name, table, merged.get()),
                    "found cells merged over several rows, of which only the first has the value; expected each row with its own, such as the merge undone and the value copied down");
        }
    }

    @Override
    public void raise(Payouts.Raise raise) {
        payouts.tie(form instanceof Layout, name, raise);
        asked.raise(raise);
        try {
            tables.encoding(form.shape()).ifPresent(q -> raise.query(ENCODING, name, q));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        if (tables.hasNativeDates()) {
            new Unseen(tables, table, rows.look().hidden(form.shape().headerRow())).raise(raise);
        }
    }

    @Override
    public void close() throws IOException {
        try {
            rows.close();
        } finally {
            tables.close();
        }
    }
}
