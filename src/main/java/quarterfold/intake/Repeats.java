package quarterfold.intake;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import quarterfold.intake.EarlierFile.Met;
import quarterfold.intake.RepeatRule.Meeting;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Line;
import quarterfold.money.Amount;

/**
 * Finds the rows of a file that repeat rows of earlier files of the same layout. Files meet as
 * multisets: what an earlier one entered once is met by one row, so that of a row that files have
 * once and twice there are two, and two real rows of one file stay two.
 *
 * <p>Rows say the same where their {@link RowMark}s agree. Only files of a row's day are looked at.
 * {@link #concern} and marks are for the thread that reads, the rest is for the one that enters.
 */
final class Repeats {
    static final String CODE = "rows-repeated";
    static final String ALIKE = "rows-alike";

    /** Rows that differ of so many are looked at for entries in other words: enough to tell. */
    private static final int LOOKED_AT = 10_000;

    private final RepeatRule rule;
    private final String file;
    private final List<EarlierFile> earlier;
    private final EntryDigest digest = new EntryDigest();
    private long seen;
    private long rows;
    private long nameless;
    private Amount money = Amount.ZERO;
    private Optional<Example> example = Optional.empty();
    private long looked;
    private long seenLooking;
    private long alike;
    private Optional<Alike> firstAlike = Optional.empty();
    private long namedAlike;
    private Optional<Alike> firstNamedAlike = Optional.empty();
    private Optional<Problem> fault = Optional.empty();

    private record Example(long row, Met met) {}

    private record Alike(long row, EarlierFile file, long entries) {}

    private Repeats(RepeatRule rule, String file, List<EarlierFile> earlier) {
        this.rule = rule;
        this.file = file;
        this.earlier = earlier;
    }

    /**
     * @param name of the file being read
     * @param source its number; those that came before it are looked at
     */
    static Repeats of(Reading reading, String name, Shelf shelf, long source) {
        RepeatRule rule = reading.repeats();
        return new Repeats(
                rule,
                name,
                rule.meeting() == Meeting.EACH
                        ? List.of()
                        : shelf.before(source, reading.layout()).stream()
                                .map(s -> new EarlierFile(s, shelf))
                                .toList());
    }

    /** The name of the file being read. */
    String file() {
        return file;
    }

    /** Whether a row of the day may repeat one, so that its mark is needed. */
    boolean concern(LocalDate day) {
        for (EarlierFile each : earlier) {
            if (each.covers(day)) {
                return true;
            }
        }
        return false;
    }

    /**
     * Looks for a row that says the same.
     *
     * @param lines of the row
     * @return why the row is set aside; empty where it is entered
     */
    Optional<String> meet(RowMark mark, List<Line> lines) {
        if (fault.isPresent() || (rule.meeting() == Meeting.ASK && areImports(lines))) {
            return Optional.empty();
        }
        seen++;
        if (looked < LOOKED_AT) {
            seenLooking = seen;
        }
        try {
            Optional<Met> met = find(mark, lines.get(0).taxPoint());
            if (met.isPresent()) {
                note(mark, met.get(), lines);
                return rule.meeting() == Meeting.ONCE
                        ? Optional.of(
                                "repeats %s: it is entry %d"
                                        .formatted(met.get(), met.get().entry()))
                        : Optional.empty();
            }
            if (rule.looks() && looked < LOOKED_AT) {
                look(mark, lines);
            }
        } catch (BadFile e) {
            fault = Optional.of(e.problem());
        }
        return Optional.empty();
    }

    /**
     * An import is known by its entry reference, date and VAT, and counts once wherever it stands.
     */
    private static boolean areImports(List<Line> lines) {
        return lines.stream()
                .allMatch(
                        l ->
                                !l.document().isEmpty()
                                        && (l.profile().kind() == Kind.IMPORT_VAT_PAID
                                                || l.profile().kind()
                                                        == Kind.IMPORT_VAT_POSTPONED));
    }

    private Optional<Met> find(RowMark mark, LocalDate day) throws BadFile {
        for (EarlierFile each : earlier) {
            Optional<Met> met = each.covers(day) ? each.meet(mark) : Optional.empty();
            if (met.isPresent()) {
                return met;
            }
        }
        return Optional.empty();
    }

    private void note(RowMark mark, Met met, List<Line> lines) {
        rows++;
        for (Line line : lines) {
            money = money.plus(line.signedMoney());
        }
        boolean named = areNamed(lines);
        if (!named) {
            nameless++;
        }
        if (example.isEmpty() || (nameless == 1 && !named)) {
            example = Optional.of(new Example(mark.row(), met));
        }
    }

    private static boolean areNamed(List<Line> lines) {
        return lines.stream().anyMatch(l -> !l.order().isEmpty() || !l.document().isEmpty());
    }

    private void look(RowMark mark, List<Line> lines) {
        looked++;
        long entries = digest.of(lines);
        for (EarlierFile each : earlier) {
            if (each.covers(lines.get(0).taxPoint()) && each.makes(entries)) {
                alike++;
                Alike like = new Alike(mark.row(), each, entries);
                firstAlike = firstAlike.or(() -> Optional.of(like));
                if (areNamed(lines) || each.isReadOtherwise()) {
                    namedAlike++;
                    firstNamedAlike = firstNamedAlike.or(() -> Optional.of(like));
                }
                return;
            }
        }
    }

    /** Adds a problem where the rows cannot be compared, or seem to be the same in other words. */
    void judge(Problems problems) {
        fault.ifPresent(problems::add);
        if (fault.isEmpty() && alike * 2 > seenLooking) {
            firstAlike
                    .flatMap(a -> a.file().maker(a.entries()).map(met -> new Example(a.row(), met)))
                    .ifPresent(
                            like ->
                                    problems.add(
                                            new Problem(
                                                    file,
                                                    "",
                                                    "found %d of %d rows of the same days that make the entries of an earlier export in other words, such as row %d and %s; expected the rows as that export has them; where a column numbers the rows of each export anew, name it in the layout, such as repeats: {ignore: [Line]}; where they are other rows, say repeats: {rows: each}"
                                                            .formatted(
                                                                    alike,
                                                                    seenLooking,
                                                                    like.row(),
                                                                    like.met()))));
        }
    }

    /** Rows that repeat others and are set aside, and the money they state. */
    Repeated repeated() {
        return rule.meeting() == Meeting.ONCE ? new Repeated(rows, money) : Repeated.NONE;
    }

    /** Raises a question where rows that say the same may yet be two. */
    void raise(Payouts.Raise raise) {
        example.filter(e -> rows > 0).ifPresent(e -> raise(e, raise));
        firstNamedAlike
                .flatMap(a -> a.file().maker(a.entries()).map(met -> new Example(a.row(), met)))
                .ifPresent(like -> raiseAlike(like, raise));
    }

    /** Rows of one order or document, or by another layout, that make the same are hardly two. */
    private void raiseAlike(Example like, Payouts.Raise raise) {
        raise.query(
                ALIKE,
                "rows",
                "%s of an earlier export in other words, such as row %d and %s, entry %d; they are entered: has a column come or gone between the two? If they are the same, decide duplicate-of for each of their entries. Set this query aside once that is done, or if they are not"
                        .formatted(
                                namedAlike == 1
                                        ? "1 row makes the entries"
                                        : namedAlike + " rows make the entries",
                                like.row(),
                                like.met(),
                                like.met().entry()));
    }

    private void raise(Example first, Payouts.Raise raise) {
        String found =
                "%s, such as row %d and %s, entry %d"
                        .formatted(
                                count(rule.meeting() == Meeting.ASK ? rows : nameless),
                                first.row(),
                                first.met(),
                                first.met().entry());
        if (rule.meeting() == Meeting.ASK) {
            raise.query(
                    CODE,
                    "rows",
                    "%s; they are entered again, %s together, since two rows of a plain sheet may be for two events: are they the same? If so, decide duplicate-of for each of their entries. Set this query aside once that is done, or if they are not"
                            .formatted(found, money));
        } else if (nameless > 0 && rows * 2 < seen) {
            raise.query(
                    CODE,
                    "rows",
                    "%s; they are set aside as the same, but most rows of those days differ, and these name no order and no document: are they the same? If not, enter them on a plain sheet"
                            .formatted(found));
        }
    }

    private static String count(long rows) {
        return rows == 1
                ? "1 row says the same as one of an earlier file"
                : rows + " rows say the same as rows of earlier files";
    }
}
