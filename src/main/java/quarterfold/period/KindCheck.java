package quarterfold.period;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import quarterfold.ledger.AskedEntries;
import quarterfold.ledger.Decision;
import quarterfold.ledger.Decision.Action;
import quarterfold.ledger.Decision.Target;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Kind;
import quarterfold.ledger.KindDecisions;
import quarterfold.ledger.Ledger;
import quarterfold.ledger.LedgerException;
import quarterfold.ledger.LedgerException.Fault;
import quarterfold.ledger.RaisedQuery;

/**
 * Refuses a decision on what entries are that would move other money than the file states, or that
 * later decisions go by.
 */
final class KindCheck {

    /** What is decided of an entry because it is of its kind. */
    private static final Set<Action> BY_KIND =
            EnumSet.of(Action.TREAT_AS, Action.DISALLOW, Action.DUPLICATE_OF);

    private final Ledger ledger;
    private final Decision decision;
    private final Decision meant;
    private final List<Entry> about;
    private final List<AskedEntries> runs;

    /**
     * @param meant the decision, or the one that it undoes
     * @param about an entry of each kind and day that it is about
     */
    KindCheck(Ledger ledger, Decision decision, Decision meant, List<Entry> about) {
        this.ledger = ledger;
        this.decision = decision;
        this.meant = meant;
        this.about = about;
        runs = runs(ledger, meant);
    }

    /**
     * @throws LedgerException saying the place, what was found and what was expected
     */
    void check() throws LedgerException {
        if (decision.action() == Action.STATE) {
            kind();
        }
        Decision.inForce(ledger.decisions()).stream()
                .filter(d -> d.target() == Target.ENTRY && BY_KIND.contains(d.action()))
                .filter(d -> isAbout(d.about()) || isAbout(d.value()))
                .findFirst()
                .ifPresent(this::goesByIt);
    }

    private void kind() {
        if (decision.target() == Target.QUERY && about.isEmpty()) {
            throw new LedgerException(
                    Fault.BAD_INPUT,
                    "--query: found '%s', of whose entries the ledger has no note; expected --entry with the number of each, as the command ledger lists them, such as --entry 4"
                            .formatted(decision.about()));
        }
        Kind kind = KindDecisions.kind(decision).orElseThrow();
        for (Entry entry : about) {
            if ((kind.direction() == 0) != (entry.kind().direction() == 0)) {
                throw new LedgerException(
                        Fault.USAGE,
                        "--state: found '%s', a kind that %s money; expected one that %s, as entry %d of kind %s does: %s, such as %s"
                                .formatted(
                                        decision.value(),
                                        kind.direction() == 0 ? "moves no" : "moves",
                                        entry.kind().direction() == 0 ? "moves none" : "moves some",
                                        entry.number(),
                                        entry.kind().code(),
                                        codes(entry.kind()),
                                        example(entry.kind()).code()));
            }
        }
        if (about.stream().allMatch(e -> e.kind() == kind)) {
            throw new LedgerException(
                    Fault.USAGE,
                    "--state: found '%s', which %s already; expected another kind, such as kind=%s"
                            .formatted(
                                    decision.value(),
                                    decision.target() == Target.ENTRY
                                            ? "the entry is"
                                            : "its entries are",
                                    (kind == Kind.FEE ? Kind.EXPENSE : Kind.FEE).code()));
        }
    }

    private static String codes(Kind like) {
        return Arrays.stream(Kind.values())
                .filter(k -> (k.direction() == 0) == (like.direction() == 0))
                .map(Kind::code)
                .collect(Collectors.joining(", "));
    }

    private static Kind example(Kind like) {
        return like.direction() == 0 ? Kind.GIFT : Kind.FEE;
    }

    private void goesByIt(Decision other) {
        throw new LedgerException(
                Fault.BAD_INPUT,
                "--%s: found decision %d, %s of entry %s, which goes by the kind that the entry has; expected it taken back first: --undo %d"
                        .formatted(
                                decision.action().code(),
                                other.id(),
                                (other.action().code() + " " + other.value()).strip(),
                                other.about(),
                                other.id()));
    }

    /** Whether an entry's number is of one that changes its kind. */
    private boolean isAbout(String number) {
        if (meant.target() == Target.ENTRY) {
            return meant.about().equals(number);
        }
        return EntryNumber.of(number).isPresent() && isIn(runs, Long.parseLong(number));
    }

    private static boolean isIn(List<AskedEntries> runs, long number) {
        return runs.stream().anyMatch(run -> run.first() <= number && number <= run.last());
    }

    private static List<AskedEntries> runs(Ledger ledger, Decision meant) {
        return RaisedQuery.Name.parse(meant.about()).map(ledger::asked).orElse(List.of());
    }
}
