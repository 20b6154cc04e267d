package quarterfold.intake;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import quarterfold.ledger.Settings;

/** Finds the form a file has, from its header alone. */
final class Recognition {

    /** A table of the file, its header, and the form they are of. */
    record Found(Form form, String table, Header header) {}

    /**
     * A header some form looks at, and the columns of the form it lacks.
     *
     * @param below whether they are those of a table below, which does not begin
     * @param partly whether a table below that may be left out is not there
     */
    private record Attempt(
            Form form,
            String table,
            Header header,
            List<String> lacking,
            int wanted,
            boolean below,
            boolean partly) {
        boolean fits() {
            return lacking.isEmpty();
        }

        /** Whether half of the columns are there, so that the form may well be meant. */
        boolean isNear() {
            return lacking.size() * 2 <= wanted && lacking.size() < wanted;
        }

        /** The columns of the file that the form names. */
        Set<String> read() {
            return form.named().stream().filter(header::has).collect(Collectors.toSet());
        }
    }

    private static final String LEARN =
            "; or a layout for it, which this works out: quarterfold learn FILE";

    private final Tables tables;
    private final String name;
    private final Set<String> ours = new HashSet<>();
    private final List<Attempt> attempts = new ArrayList<>();
    private final List<Attempt> moved = new ArrayList<>();
    private final List<BadFile> failures = new ArrayList<>();

    private Recognition(Tables tables, String name) {
        this.tables = tables;
        this.name = name;
    }

    /** The one form that fits; the book's own layouts win over those that ship. */
    static Found recognise(Tables tables, String name, Layouts layouts)
            throws BadFile, IOException {
        Recognition own = new Recognition(tables, name);
        own.attempt(layouts.own(), true);
        layouts.own().forEach(form -> own.ours.add(form.name()));
        Recognition all = own;
        // What rows look like says less than column names, the shipped layouts' included.
        if (own.fitting().stream().noneMatch(a -> a.form().shape().headerRow() > 0)) {
            all.attempt(layouts.shipped(), false);
        }
        List<Attempt> fitting = all.fitting();
        if (fitting.isEmpty()) {
            throw all.unknown();
        }
        List<String> names = fitting.stream().map(a -> a.form().name()).distinct().toList();
        if (names.size() > 1) {
            throw new BadFile(
                    name,
                    "found a header that fits the layouts %s; expected it to fit one; say which, such as --layout %s"
                            .formatted(String.join(" and ", names), names.get(0)));
        }
        Attempt first = all.only(fitting);
        return new Found(first.form(), first.table(), first.header());
    }

    /** The table that has the columns of the form asked for; each that lacks is a problem. */
    static Found as(Tables tables, String name, List<Form> forms, Problems problems)
            throws BadFile, IOException {
        Recognition recognition = new Recognition(tables, name);
        recognition.attempt(forms, true);
        Optional<Attempt> best = recognition.nearest();
        if (best.isEmpty()) {
            throw recognition.unknown();
        }
        List<Attempt> fitting = recognition.fitting();
        Attempt attempt = fitting.isEmpty() ? best.get() : recognition.only(fitting);
        if (attempt.below()) {
            problems.add(recognition.noTable(attempt).problem());
        }
        for (String column : attempt.below() ? List.<String>of() : attempt.lacking()) {
            problems.add(
                    above(attempt, column)
                            .map(line -> recognition.noLine(attempt, line))
                            .orElseGet(
                                    () ->
                                            new Problem(
                                                    recognition.place(attempt),
                                                    column,
                                                    "found no such column; expected every column that layout %s names, such as '%s'"
                                                            .formatted(
                                                                    attempt.form().name(),
                                                                    column))));
        }
        return new Found(attempt.form(), attempt.table(), attempt.header());
    }

    /** The tables of the file that fit the form. */
    static List<String> tables(Tables tables, String name, Form form) throws IOException {
        Recognition recognition = new Recognition(tables, name);
        recognition.attempt(List.of(form), true);
        return recognition.fitting().stream().map(Attempt::table).distinct().toList();
    }

    /** The names of the forms that fit the file so that none of them wins. */
    static List<String> names(Tables tables, String name, List<Form> forms) throws IOException {
        Recognition recognition = new Recognition(tables, name);
        recognition.attempt(forms, true);
        return recognition.fitting().stream().map(a -> a.form().name()).distinct().toList();
    }

    /** A reader of the table's rows, or nothing where its header will not do, as problems say. */
    static Optional<RowReader> reader(
            Tables tables,
            String name,
            Found found,
            Settings book,
            Payouts payouts,
            Asked asked,
            Problems problems) {
        String place = place(tables, name, found.table(), found.form());
        found.header()
                .repeated(found.form().named())
                .forEach(
                        (column, where) ->
                                problems.add(
                                        new Problem(
                                                place,
                                                column,
                                                "found the name in %s; expected it once, such as one of them renamed"
                                                        .formatted(where))));
        if (!problems.none()) {
            return Optional.empty();
        }
        RowReader reader =
                found.form()
                        .reader(
                                new Form.Terms(
                                        found.header(),
                                        place,
                                        book,
                                        tables.hasNativeDates(),
                                        payouts,
                                        asked,
                                        problems));
        return problems.none() ? Optional.of(reader) : Optional.empty();
    }

    /**
     * {@code near}: whether column names are looked for in other rows than a layout has them in.
     */
    private void attempt(List<Form> forms, boolean near) throws IOException {
        for (Form form : forms) {
            if (PdfReading.ofLines(form).isPresent()) {
                continue;
            }
            for (String table : tables.names()) {
                try (Rows rows = AboveRows.of(tables, table, form)) {
                    if (form.shape().headerRow() == 0 && form instanceof Layout layout) {
                        attempts.add(headerless(layout, table, rows));
                        continue;
                    }
                    Optional<List<String>> names = Tables.header(rows, form.shape().headerRow());
                    if (names.isPresent()) {
                        attempts.add(attempt(form, table, names.get(), rows));
                    }
                    if (near
                            && form instanceof Layout layout
                            && (names.isEmpty() || !attempts.get(attempts.size() - 1).fits())) {
                        elsewhere(layout, table);
                    }
                } catch (BadFile e) {
                    failures.add(e);
                }
            }
        }
    }

    /** Tries the layout with its column names in another row, where one near has them. */
    private void elsewhere(Layout layout, String table) throws BadFile, IOException {
        Optional<Layout> other = MovedNames.find(tables, table, layout);
        if (other.isPresent()) {
            try (Rows rows = AboveRows.of(tables, table, other.get())) {
                List<String> names =
                        Tables.header(rows, other.get().shape().headerRow()).orElse(List.of());
                moved.add(attempt(other.get(), table, names, rows));
            }
        }
    }

    private static Attempt attempt(Form form, String table, List<String> names, Rows rows)
            throws BadFile {
        Header header = new Header(names, rows.above());
        List<String> lacking =
                new ArrayList<>(form.columns().stream().filter(c -> !header.has(c)).toList());
        int wanted = form.columns().size();
        boolean first = lacking.isEmpty();
        if (form instanceof Layout layout && !layout.tables().isEmpty()) {
            StackedTables below = new StackedTables(layout);
            List<String> absent = first ? below.lacking(header, rows) : List.of();
            if (!layout.tablesNeeded()) {
                return new Attempt(form, table, header, lacking, wanted, false, !absent.isEmpty());
            }
            lacking.addAll(absent);
            wanted += below.columns();
        }
        return new Attempt(
                form, table, header, lacking, wanted, first && !lacking.isEmpty(), false);
    }

    /** Without column names, rows must read as the layout says. */
    private static Attempt headerless(Layout layout, String table, Rows rows) throws BadFile {
        Header header = new Header(Header.numbered(layout.shape().columns()));
        boolean fits = Headerless.fits(layout, rows);
        List<String> columns = List.copyOf(layout.columns());
        return new Attempt(
                layout, table, header, fits ? List.of() : columns, columns.size(), false, false);
    }

    /**
     * Column names say more than what rows look like, every table of a layout there more than some,
     * and several shapes more than one.
     */
    private List<Attempt> fitting() {
        List<Attempt> inPlace = attempts.stream().filter(Attempt::fits).toList();
        List<Attempt> fitting =
                inPlace.isEmpty() ? moved.stream().filter(Attempt::fits).toList() : inPlace;
        List<Attempt> named =
                fitting.stream().filter(a -> a.form().shape().headerRow() > 0).toList();
        List<Attempt> best = named.isEmpty() ? fitting : named;
        if (best.stream().anyMatch(a -> !a.partly())) {
            best = best.stream().filter(a -> !a.partly()).toList();
        }
        List<Attempt> shaped =
                best.stream()
                        .filter(a -> a.form() instanceof Layout l && !l.shapes().isEmpty())
                        .toList();
        return fullest(shaped.isEmpty() ? best : shaped);
    }

    /** Without those of which another reads all columns, and more. */
    private static List<Attempt> fullest(List<Attempt> fitting) {
        return fitting.stream()
                .filter(
                        a ->
                                fitting.stream()
                                        .noneMatch(
                                                b ->
                                                        b.read().size() > a.read().size()
                                                                && b.read().containsAll(a.read())))
                .toList();
    }

    /** The one table of those that fit. Which of several is meant is not guessed. */
    private Attempt only(List<Attempt> fitting) throws BadFile {
        List<String> tables = fitting.stream().map(Attempt::table).distinct().toList();
        if (tables.size() > 1) {
            throw new BadFile(
                    name,
                    "found %d sheets that fit the layout %s: %s; expected one in a file, such as a copy of the workbook for each of them, without the others"
                            .formatted(
                                    tables.size(),
                                    fitting.get(0).form().name(),
                                    tables.stream()
                                            .limit(10)
                                            .map(
                                                    t ->
                                                            "'"
                                                                    + t
                                                                    + "'"
                                                                    + (this.tables.isHidden(t)
                                                                            ? " (hidden)"
                                                                            : ""))
                                            .collect(Collectors.joining(", "))));
        }
        return fitting.get(0);
    }

    /** The attempt that lacks the smallest share of its form's columns, the first of several. */
    private Optional<Attempt> nearest() {
        Optional<Attempt> nearest = Optional.empty();
        double least = 2;
        for (Attempt attempt : attempts) {
            double share = attempt.lacking().size() / (double) attempt.wanted();
            if (share < least) {
                least = share;
                nearest = Optional.of(attempt);
            }
        }
        return nearest;
    }

    private BadFile unknown() {
        Optional<BadFile> fault = tables.fault();
        if (fault.isPresent()) {
            return fault.get();
        }
        Optional<Attempt> nearest = nearest().filter(a -> a.lacking().size() < a.wanted());
        if (nearest.isEmpty() && !failures.isEmpty()) {
            return failures.get(failures.size() - 1);
        }
        if (nearest.isEmpty()) {
            return new BadFile(
                    name,
                    "found no header that a layout knows; expected the columns of a layout or of the plain sheet, such as date,kind,gross"
                            + LEARN);
        }
        Attempt attempt = nearest.get();
        if (!attempt.isNear()) {
            return new BadFile(
                    place(attempt),
                    "found the header %s, which no layout fits; expected the columns of a layout or of the plain sheet, such as date,kind,gross%s"
                            .formatted(Problem.quoted(attempt.header().toString()), LEARN));
        }
        if (attempt.below()) {
            return noTable(attempt);
        }
        List<LinePattern> lines =
                attempt.lacking().stream().flatMap(c -> above(attempt, c).stream()).toList();
        if (lines.size() == attempt.lacking().size()) {
            return new BadFile(noLine(attempt, lines.get(0)));
        }
        return new BadFile(
                place(attempt),
                "found the header %s, which no layout fits; expected, for layout %s, also %s%s"
                        .formatted(
                                Problem.quoted(attempt.header().toString()),
                                attempt.form().name(),
                                lacking(attempt),
                                learn(attempt)));
    }

    /** A layout of the book's own can be learned again, and may then read both. */
    private String learn(Attempt attempt) {
        String name = attempt.form().name();
        return ours.contains(name)
                ? "; where the report has %s no more, learn it again, which tells whether both are read then: quarterfold learn FILE --name %s --accept"
                        .formatted(attempt.lacking().size() == 1 ? "it" : "them", name)
                : LEARN;
    }

    private BadFile noTable(Attempt attempt) {
        return new BadFile(
                tables.hasNativeDates() ? name + ":" + attempt.table() : name,
                "found no row with the column names %s below the table; expected one, for layout %s; where the export may leave that table out, add to the layout: tables_below: optional"
                        .formatted(lacking(attempt), attempt.form().name()));
    }

    /** The line above the column names that would say the column, if it is of one. */
    private static Optional<LinePattern> above(Attempt attempt, String column) {
        return attempt.form().above().stream()
                .filter(line -> line.names().contains(column))
                .findFirst();
    }

    private Problem noLine(Attempt attempt, LinePattern line) {
        return new Problem(
                place(attempt),
                "",
                "found no line above the column names that reads '%s'; expected one, for layout %s: where the report now words it otherwise, put the line under above right"
                        .formatted(line, attempt.form().name()));
    }

    private static String lacking(Attempt attempt) {
        return attempt.lacking().stream().map(Problem::quoted).collect(Collectors.joining(", "));
    }

    private String place(Attempt attempt) {
        return place(tables, name, attempt.table(), attempt.form());
    }

    static String place(Tables tables, String name, String table, Form form) {
        String sheet = tables.hasNativeDates() ? ":" + table + "!" : ":";
        return name + sheet + Math.max(1, form.shape().headerRow());
    }
}
