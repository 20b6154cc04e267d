package quarterfold.intake;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** A PDF with a text layer, read by the layout whose lines it has. */
final class PdfReading implements Reading {
    private final String name;
    private final Layout layout;
    private final PrintedRows rows;
    private final Row row;
    private final Optional<RowReader> reader;
    private final Payouts payouts = new Payouts();
    private final ToSettlements toSettlements = new ToSettlements(payouts);
    private final Asked asked = new Asked();
    private boolean any;

    private PdfReading(Brought file, Layout layout, Print print, List<PrintedLine> lines) {
        name = file.name();
        this.layout = layout;
        rows = new PrintedRows(name, layout, print, lines, file.problems());
        Header header = new Header(rows.columns());
        row = new Row(rows, header, layout.shape().blanks(), file.problems());
        RowReader made =
                layout.reader(
                        new Form.Terms(
                                header, name, file.book(), false, payouts, asked, file.problems()));
        reader = file.problems().none() ? Optional.of(made) : Optional.empty();
    }

    /**
     * Opens a PDF.
     *
     * @param as the layout to read it with; found from its lines where empty
     * @throws BadFile if it has no text, or no layout or several know its lines
     */
    static Reading open(Brought file, Optional<Layout> as) throws BadFile, IOException {
        List<PrintedLine> lines;
        try (PdfFile pdf = PdfFile.open(file.path(), file.name())) {
            lines = PdfLines.of(pdf);
        }
        Layout layout = as.isPresent() ? as.get() : recognise(file, lines);
        Print print = layout.print().orElseThrow();
        for (LinePattern line : print.knownBy()) {
            if (!isThere(line, lines)) {
                throw new BadFile(
                        file.name(),
                        "found no line '%s'; expected one, as layout %s is known by it"
                                .formatted(line, layout.name()));
            }
        }
        return new PdfReading(file, layout, print, lines);
    }

    /** Whether a layout, or several, know the text of a PDF's pages. */
    static boolean isKnown(PdfFile pdf, Layouts layouts) {
        try {
            List<PrintedLine> lines = PdfLines.of(pdf);
            return !fitting(layouts.own(), lines).isEmpty()
                    || !fitting(layouts.shipped(), lines).isEmpty();
        } catch (BadFile unreadable) {
            return false;
        }
    }

    /** The one layout that fits; the book's own win over those that ship. */
    private static Layout recognise(Brought file, List<PrintedLine> lines) throws BadFile {
        List<Layout> fitting = fitting(file.layouts().own(), lines);
        if (fitting.isEmpty()) {
            fitting = fitting(file.layouts().shipped(), lines);
        }
        if (fitting.isEmpty()) {
            throw new BadFile(
                    file.name(),
                    "found a PDF of which no layout knows the text, which begins with %s; expected a line such as %s; write a layout for it, or enter its rows in the plain sheet"
                            .formatted(
                                    Problem.quoted(lines.get(0).text()),
                                    printed(file.layouts())
                                            .map(l -> "'" + l.knownBy().get(0) + "'")
                                            .collect(Collectors.joining(" or "))));
        }
        if (fitting.size() > 1) {
            throw new BadFile(
                    file.name(),
                    "found lines that fit the layouts %s; expected them to fit one; say which, such as --layout %s"
                            .formatted(
                                    fitting.stream()
                                            .map(Layout::name)
                                            .collect(Collectors.joining(" and ")),
                                    fitting.get(0).name()));
        }
        return fitting.get(0);
    }

    private static Stream<Print> printed(Layouts layouts) {
        return Stream.concat(layouts.own().stream(), layouts.shipped().stream())
                .flatMap(form -> ofLines(form).stream())
                .flatMap(layout -> layout.print().stream());
    }

    private static List<Layout> fitting(List<Form> forms, List<PrintedLine> lines) {
        return forms.stream()
                .flatMap(form -> ofLines(form).stream())
                .filter(
                        layout ->
                                layout.print().orElseThrow().knownBy().stream()
                                        .allMatch(line -> isThere(line, lines)))
                .toList();
    }

    /** The form, where it is a layout of printed lines. */
    static Optional<Layout> ofLines(Form form) {
        return form instanceof Layout layout && layout.print().isPresent()
                ? Optional.of(layout)
                : Optional.empty();
    }

    private static boolean isThere(LinePattern pattern, List<PrintedLine> lines) {
        return lines.stream().anyMatch(line -> pattern.match(line.text()).isPresent());
    }

    @Override
    public String layout() {
        return layout.name();
    }

    @Override
    public boolean next() throws BadFile {
        boolean more = reader.isPresent() && row.next();
        any |= more;
        return more;
    }

    @Override
    public long read(RowReader.Output output) {
        return reader.orElseThrow().read(row, toSettlements.and(output));
    }

    @Override
    public void fault(String fault) {
        row.fault("", fault);
    }

    @Override
    public void finish() throws BadFile {
        if (!any) {
            throw new BadFile(
                    name,
                    "found no line that is a row of layout %s; expected at least one, such as %s"
                            .formatted(layout.name(), rows.expected()));
        }
    }

    @Override
    public void raise(Payouts.Raise raise) {
        payouts.tie(true, name, raise);
        asked.raise(raise);
    }

    @Override
    public void close() {
        rows.close();
    }
}
