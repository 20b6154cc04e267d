package quarterfold.intake;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Finds what lines above the column names state of the whole file: its payout and its currency.
 * Other files state their own, which an import then reads and holds their rows against.
 */
final class AboveStudy {
    private static final Pattern AMOUNT =
            Pattern.compile("[-+(]?[0-9](?:[0-9.,'\u2019 ]*[0-9])?[)]?-?");
    private static final String EXPRESSION = "[-+(]?[0-9][0-9.,'\u2019 ]*[)]?-?";
    private static final Pattern CODE = Pattern.compile("\\b[A-Z]{3}\\b");

    private final List<Grid.Line> lines;
    private final Layout layout;
    private final TableMoney money;
    private final Vocabulary words;
    private final Findings findings;
    private final LineAmounts amounts;
    private final AmountReader reader;
    private final Set<String> taken;
    private final List<LinePattern> above;
    private Optional<String> payout;
    private Optional<String> currency = Optional.empty();

    private AboveStudy(
            List<Grid.Line> lines,
            Layout layout,
            TableMoney money,
            Vocabulary words,
            Findings findings) {
        this.lines = lines;
        this.layout = layout;
        this.money = money;
        this.words = words;
        this.findings = findings;
        amounts = new LineAmounts(layout.numbers());
        reader = new AmountReader(layout.numbers());
        taken =
                lines.stream()
                        .flatMap(l -> l.cells().stream())
                        .collect(Collectors.toCollection(HashSet::new));
        layout.all().forEach(l -> taken.addAll(l.named()));
        above = new ArrayList<>(layout.above());
        payout = layout.payoutColumn();
    }

    /**
     * The layout with what the lines state of every file.
     *
     * @param lines above the column names
     * @param layout of the whole file, as learned so far
     * @param money what the rows of the whole file come to
     */
    static Layout of(
            List<Grid.Line> lines,
            Layout layout,
            TableMoney money,
            Vocabulary words,
            Findings findings) {
        if (layout.shape().headerRow() < 2) {
            return layout;
        }
        AboveStudy study = new AboveStudy(lines, layout, money, words, findings);
        lines.forEach(study::payout);
        study.currency();
        return study.made();
    }

    private static String text(Grid.Line line) {
        return AboveRows.line(line.cells());
    }

    private boolean isRead(String text) {
        return above.stream().anyMatch(p -> p.match(text).isPresent());
    }

    private void payout(Grid.Line line) {
        String text = text(line);
        boolean labelled = words.isLabel(text, "payout") || words.isLabel(text, "total");
        boolean ties =
                labelled && amounts.of(line).stream().anyMatch(a -> money.known(a).isPresent());
        if (!ties) {
            return; // what does not tie is told already
        }
        long paid = money.all() - money.paid();
        List<MatchResult> stated =
                AMOUNT.matcher(text).results().filter(m -> reader.read(m.group()) == paid).toList();
        boolean free = payout.isEmpty() && stated.size() == 1 && !isRead(text);
        String name = name("Payout above");
        if (!free || !add(text, stated.get(0), name, EXPRESSION)) {
            findings.note(
                    "row %d ('%s') ties here, but import does not hold it against the rows of other files"
                            .formatted(line.number(), text));
            return;
        }
        taken.add(name);
        payout = Optional.of(name);
        findings.note(
                "row %d ('%s') states the payout: import holds it against the rows of every file"
                        .formatted(line.number(), text));
    }

    /** Whether the line of the pattern is told from every other line above. */
    private boolean add(String text, MatchResult at, String name, String expression) {
        String line =
                (UndatedFinder.loose(text.substring(0, at.start()))
                                + "{%s: %s}".formatted(name, expression)
                                + UndatedFinder.loose(text.substring(at.end())))
                        .strip();
        if (text.indexOf('{') >= 0 || text.indexOf('}') >= 0) {
            return false;
        }
        LinePattern pattern = LinePattern.of(line);
        long like = lines.stream().filter(l -> pattern.match(text(l)).isPresent()).count();
        boolean good = pattern.hasWords() && !pattern.fitsAnything() && like == 1;
        if (good) {
            above.add(pattern);
        }
        return good;
    }

    private String name(String name) {
        String free = name;
        while (taken.contains(free)) {
            free += " the rows";
        }
        return free;
    }

    /** The one currency the layout has, where one line states it and no other has a say. */
    private void currency() {
        Optional<String> code = layout.currency();
        boolean all = layout.all().stream().allMatch(l -> l.currency().equals(code));
        if (code.isEmpty() || !all) {
            return;
        }
        List<Grid.Line> stating =
                lines.stream().filter(l -> codes(text(l)).contains(code.get())).toList();
        if (stating.stream().anyMatch(l -> isRead(text(l)))) {
            return; // the line is read, and its words have the code
        }
        for (Grid.Line line : stating) {
            String text = text(line);
            List<MatchResult> found =
                    CODE.matcher(text).results().filter(m -> m.group().equals(code.get())).toList();
            String name = name("Currency above");
            if (found.size() == 1 && add(text, found.get(0), name, "[A-Z]{3}")) {
                currency = Optional.of(name);
                return;
            }
        }
        sign(code.get());
    }

    private static List<String> codes(String text) {
        return CODE.matcher(text).results().map(MatchResult::group).toList();
    }

    /** A sign that a line alone has, and no amount of a row, is not looked at by import. */
    private void sign(String code) {
        boolean signed = !layout.numbers().units().isEmpty();
        lines.stream()
                .map(AboveStudy::text)
                .filter(t -> !signed && !isRead(t))
                .filter(t -> codes(t).contains(code) || hasSign(t, code))
                .findFirst()
                .ifPresent(
                        t ->
                                findings.note(
                                        "'%s' says that amounts are in %s: import takes them so in every file, whatever it says there"
                                                .formatted(t, code)));
    }

    private boolean hasSign(String text, String code) {
        return words.currencies().entrySet().stream()
                .anyMatch(e -> e.getValue().equals(code) && text.contains(e.getKey()));
    }

    private Map<Field, String> fields(Layout of) {
        Map<Field, String> fields = new EnumMap<>(Field.class);
        fields.putAll(of.fields());
        currency.ifPresent(c -> fields.put(Field.CURRENCY, c));
        return fields;
    }

    private Layout made() {
        return with(layout, payout, layout.shapes().stream().map(this::shape).toList());
    }

    private Layout shape(Layout shape) {
        return with(shape, shape.payoutColumn(), List.of());
    }

    private Layout with(Layout of, Optional<String> payoutColumn, List<Layout> shapes) {
        return new Layout(
                of.name(),
                of.shape(),
                of.dates(),
                of.numbers(),
                of.signs(),
                currency.isPresent() ? Optional.empty() : of.currency(),
                fields(of),
                of.constants(),
                of.workedOut(),
                of.rules(),
                of.tax(),
                of.checks(),
                of.amounts(),
                payoutColumn,
                of.outgoing(),
                of.mark(),
                of.otherRows(),
                of.balance(),
                of.repeats(),
                of.optional(),
                of.print(),
                of.when(),
                shapes,
                List.copyOf(above),
                of.tablesNeeded(),
                of.expected());
    }
}
