package quarterfold.intake;

import static java.util.stream.Collectors.joining;

import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * The columns that one of two reports of a layout has and the other has not: the one it was made
 * from, and the one it is learned from again. Where files with them and without can be read by one
 * layout they are optional in it. Where they cannot, because rows would be read as something else
 * without them, the report that is learned decides, a file of the other kind is refused, and a
 * person is told.
 */
final class OldColumns {
    /**
     * What the two reports come to.
     *
     * @param notes for a person
     */
    record Kept(Layout layout, List<String> notes) {}

    /** The report that is learned again: its column names, and the texts of a column. */
    interface Report {
        Header header();

        Set<String> texts(int column);
    }

    private final Layout old;
    private final Layout made;
    private final Report report;
    private final Header file;
    private final Header known;
    private final Set<String> gone = new LinkedHashSet<>();
    private final Set<String> fresh = new LinkedHashSet<>();
    private final OldMoney money;
    private final Map<Field, String> fields;
    private final Set<String> optional = new TreeSet<>();
    private final Map<String, List<String>> texts;
    private final List<String> notes = new ArrayList<>();

    private OldColumns(Layout old, Layout made, Report report, boolean ties) {
        this.old = old;
        this.made = made;
        this.report = report;
        file = report.header();
        Set<String> names = all(old);
        old.expected().unread().ifPresent(names::addAll);
        names.addAll(old.repeats().ignored());
        known = new Header(List.copyOf(names));
        Set<String> above = new LinkedHashSet<>();
        old.above().forEach(line -> above.addAll(line.names()));
        made.above().forEach(line -> above.addAll(line.names()));
        all(old).stream()
                .filter(c -> !file.has(c) && !Header.isNumber(c) && !above.contains(c))
                .forEach(gone::add);
        all(made).stream()
                .filter(c -> !known.has(c) && !Header.isNumber(c) && !above.contains(c))
                .forEach(fresh::add);
        money = new OldMoney(old, made, file, gone, fresh, ties);
        fields = new EnumMap<>(Field.class);
        fields.putAll(made.fields());
        texts = new LinkedHashMap<>(made.expected().texts());
    }

    private static Set<String> all(Layout layout) {
        Set<String> all = layout.named();
        all.addAll(layout.expected().texts().keySet());
        return all;
    }

    /**
     * Whether both are of plain tables with column names, the only ones that are brought together.
     */
    static boolean fits(Layout old, Layout made) {
        return List.of(old, made).stream()
                .allMatch(
                        l ->
                                l.shape().headerRow() > 0
                                        && l.print().isEmpty()
                                        && l.when().isEmpty()
                                        && l.shapes().isEmpty());
    }

    /**
     * The layout for both.
     *
     * @param fit whether the report reads no worse by a layout, and comes to the same money
     */
    static Kept keep(Layout old, Layout made, Report report, HandWritten.Fit fit)
            throws BadFile, IOException {
        if (!fits(old, made)) {
            return new Kept(made, List.of());
        }
        List<String> notes = new ArrayList<>();
        Layout given = withFields(old, made, report.header(), fit, notes);
        OldColumns columns = new OldColumns(old, given, report, true);
        Layout both = columns.both();
        if (!isSound(both, fit)) {
            columns = new OldColumns(old, given, report, false);
            both = columns.both();
        }
        if (isSound(both, fit)) {
            notes.addAll(columns.notes);
        } else {
            both = given;
        }
        return new Kept(both, notes);
    }

    static boolean isSound(Layout layout, HandWritten.Fit fit) throws BadFile, IOException {
        String yaml = LayoutWriter.write(layout, "Both", List.of());
        return HandWritten.isSound(layout.name() + ".yaml", yaml, fit);
    }

    private Layout both() {
        Set<String> renamed = renamed();
        Map<String, Set<String>> refused = new LinkedHashMap<>();
        Map<String, Set<String>> lost = new LinkedHashMap<>();
        Set<String> stay = new LinkedHashSet<>();
        Set<String> may = new LinkedHashSet<>();
        for (String column : fresh) {
            Optional<String> why =
                    renamed.contains(column)
                            ? Optional.of("another column was read as the same")
                            : money.why(column, false);
            why.ifPresent(w -> lost.computeIfAbsent(w, x -> new LinkedHashSet<>()).add(column));
            if (why.isEmpty()) {
                may.add(column);
            }
        }
        for (String column : gone) {
            Optional<String> why = money.why(column, true);
            if (why.isEmpty()) {
                boolean field =
                        old.fields().containsValue(column) && !old.needed().contains(column);
                if (!field || keepField(column)) {
                    stay.add(column);
                }
            } else {
                refused.computeIfAbsent(why.get(), x -> new LinkedHashSet<>()).add(column);
                texts.put(column, ExpectedCells.BLANK);
                optional.add(column);
            }
        }
        optional.addAll(may);
        optional.addAll(stay);
        Expected expected = expected(stay);
        Set<String> named = all(money.both(stay, fields, expected, optional));
        old.optional().stream().filter(named::contains).forEach(optional::add);
        optional.retainAll(named);
        stay.retainAll(named);
        unread().ifPresent(notes::add);
        tell("new: a file without %s is read too", may);
        tell("not in this report: a file with %s is read too, as before", stay);
        lost.forEach((why, of) -> tellApart("is new", why, "without", of));
        refused.forEach((why, of) -> tellApart("is not in this report", why, "with", of));
        return money.both(stay, fields, expected, optional);
    }

    /** Columns whose field an earlier report, which lacks them, has in a column this one lacks. */
    private Set<String> renamed() {
        Set<String> renamed = new LinkedHashSet<>();
        made.fields()
                .forEach(
                        (field, column) -> {
                            if (gone.contains(old.fields().getOrDefault(field, ""))) {
                                renamed.add(column);
                            }
                        });
        return renamed;
    }

    private boolean keepField(String column) {
        boolean[] kept = {false};
        old.fields()
                .forEach(
                        (field, named) -> {
                            if (named.equals(column) && !fields.containsKey(field)) {
                                fields.put(field, column);
                                kept[0] = true;
                            }
                        });
        return kept[0];
    }

    /** What was of no account stays so, and so do the texts that were known. */
    private Expected expected(Set<String> stay) {
        old.expected().texts().forEach((column, before) -> texts(column, before, stay));
        Set<String> unread = new TreeSet<>(made.expected().unread().orElse(Set.of()));
        old.expected().unread().ifPresent(unread::addAll);
        Set<String> needed = made.needed();
        needed.addAll(old.needed());
        if (optional.stream().anyMatch(needed::contains)) {
            unread.addAll(numbers());
        }
        return new Expected(Optional.of(unread), texts);
    }

    private void texts(String column, List<String> before, Set<String> stay) {
        if (!file.has(column)) {
            if (stay.contains(column)) {
                texts.putIfAbsent(column, before);
            }
            return;
        }
        int at = file.column(column);
        if (file.columns(made.named()).contains(at)) {
            return;
        }
        Set<String> both = new LinkedHashSet<>(before);
        for (String text : report.texts(at)) {
            if (both.add(text) && !OldOthers.hold(old, column, text)) {
                notes.add(
                        "'%1$s' says %2$s too, where the layout knew %3$s: such rows count as the others do; where they do not, %4$s"
                                .formatted(
                                        column,
                                        Problem.quoted(text),
                                        Problem.quoted(before.get(0)),
                                        OtherRowText.advice(
                                                "the layout",
                                                made.otherRows().isEmpty()
                                                        && old.otherRows().isEmpty(),
                                                OtherRowText.byText(file.reference(at), text))));
            }
        }
        texts.keySet().removeIf(c -> file.column(c) == at);
        texts.put(file.reference(at), List.copyOf(both));
    }

    /** Columns of amounts, or of texts of account, that are new and that nothing is read from. */
    private Optional<String> unread() {
        Set<String> columns = new TreeSet<>(made.expected().unread().orElse(Set.of()));
        columns.removeIf(c -> known.has(c) || texts.containsKey(c));
        return columns.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        said(columns, "is new", "are new")
                                + ", and nothing is read from "
                                + it(columns).replace("one of them", "them")
                                + " (unread)");
    }

    /** Columns of numbers that nothing is read from: seen, and of no account. */
    private Set<String> numbers() {
        UnreadMoney numbers = new UnreadMoney(made.numbers());
        Set<Integer> read = file.columns(made.named());
        Set<String> found = new LinkedHashSet<>();
        for (int i = 0; i < file.width(); i++) {
            boolean number =
                    !read.contains(i)
                            && report.texts(i).stream().anyMatch(t -> numbers.isNumber(t, false));
            if (number) {
                found.add(file.reference(i));
            }
        }
        return found;
    }

    private void tell(String what, Set<String> columns) {
        if (!columns.isEmpty()) {
            notes.add(said(columns, "is", "are") + " " + what.formatted(it(columns)));
        }
    }

    private void tellApart(String is, String why, String with, Set<String> columns) {
        notes.add(
                "%s, and %s: a file %s %s is refused from now on; to read both, learn each with a name of its own, such as --name %s-2"
                        .formatted(
                                said(columns, is, is.replaceFirst("^is ", "are ")),
                                why,
                                with,
                                it(columns),
                                made.name()));
    }

    private static String it(Set<String> columns) {
        return columns.size() == 1 ? "it" : "one of them";
    }

    private static String said(Set<String> columns, String one, String several) {
        return columns.stream().collect(joining("', '", "'", "' "))
                + (columns.size() == 1 ? one : several);
    }

    /** The layout with the fields that the one before has from columns the report has too. */
    private static Layout withFields(
            Layout old, Layout made, Header file, HandWritten.Fit fit, List<String> notes)
            throws BadFile, IOException {
        Layout kept = made;
        for (Map.Entry<Field, String> each : old.fields().entrySet()) {
            Field field = each.getKey();
            String column = each.getValue();
            Set<String> other = kept.needed();
            other.addAll(kept.fields().values());
            boolean given =
                    field != Field.DATE
                            && file.has(column)
                            && !file.columns(other).contains(file.column(column));
            if (!given) {
                continue;
            }
            Map<Field, String> with = new EnumMap<>(Field.class);
            with.putAll(kept.fields());
            with.put(field, column);
            Layout candidate = OldMoney.with(kept, with, kept.optional());
            boolean fits = isSound(candidate, fit);
            kept = fits ? candidate : kept;
            notes.add(
                    (fits
                                    ? "kept from the layout as it was: fields: %s: %s"
                                    : "not kept from the layout as it was, for it does not fit this report: fields: %s: %s")
                            .formatted(field.code(), column));
        }
        return kept;
    }
}
