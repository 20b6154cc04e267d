package quarterfold.period;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import quarterfold.ledger.Decision;
import quarterfold.ledger.Decision.Action;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Ledger;

/**
 * Refuses to call an entry the duplicate of one that cannot be the same. One file may call a
 * purchase what another calls an expense or a fee, and state it in another currency, and a line of
 * a bill may be import VAT.
 */
final class DuplicateCheck {

    private final Ledger ledger;
    private final Decision decision;

    DuplicateCheck(Ledger ledger, Decision decision) {
        this.ledger = ledger;
        this.decision = decision;
    }

    void check(Entry entry) {
        List<Kind> kinds =
                Arrays.stream(Kind.values()).filter(k -> mayBe(entry.kind(), k)).toList();
        String expected =
                "expected the number of another entry of kind %s in %s, 1 to %d"
                        .formatted(
                                kinds.stream().map(Kind::code).collect(Collectors.joining(" or ")),
                                entry.profile().currency(),
                                ledger.lastEntry());
        Optional<Entry> other = EntryNumber.of(decision.value()).flatMap(ledger::entry);
        if (other.isEmpty()) {
            throw DecisionCheck.bad(
                    "--duplicate-of: found %s; %s".formatted(decision.value(), expected));
        }
        Entry of = other.get();
        if (of.number() == entry.number()) {
            throw DecisionCheck.bad(
                    "--duplicate-of: found %d, the entry itself; %s"
                            .formatted(of.number(), expected));
        }
        if (!kinds.contains(of.kind()) || !mayBeOfOneCurrency(entry, of)) {
            throw DecisionCheck.bad(
                    "--duplicate-of: found %d, which is of kind %s in %s; %s"
                            .formatted(
                                    of.number(),
                                    of.kind().code(),
                                    of.profile().currency(),
                                    expected));
        }
        notItselfADuplicate(of);
    }

    /** Whether what is entered as one kind may be entered as the other too. */
    private static boolean mayBe(Kind kind, Kind other) {
        boolean purchases =
                kind.side() == Kind.Side.PURCHASES && other.side() == Kind.Side.PURCHASES;
        return kind == other
                || (purchases && kind.direction() == other.direction())
                || (isClaim(kind) && isImportVat(other))
                || (isImportVat(kind) && isClaim(other));
    }

    /** A list may have in sterling what the document has in its own currency. */
    private static boolean mayBeOfOneCurrency(Entry entry, Entry of) {
        return entry.profile().currency().equals(of.profile().currency())
                || (entry.kind().side() == Kind.Side.PURCHASES
                        && of.kind().side() == Kind.Side.PURCHASES);
    }

    private static boolean isClaim(Kind kind) {
        return isImportVat(kind) || (kind.side() == Kind.Side.PURCHASES && kind.direction() < 0);
    }

    private static boolean isImportVat(Kind kind) {
        return kind == Kind.IMPORT_VAT_PAID || kind == Kind.IMPORT_VAT_POSTPONED;
    }

    private void notItselfADuplicate(Entry of) {
        Decision.inForce(ledger.decisions()).stream()
                .filter(d -> d.action() == Action.DUPLICATE_OF)
                .filter(d -> d.about().equals(Long.toString(of.number())))
                .findFirst()
                .ifPresent(
                        d -> {
                            throw DecisionCheck.bad(
                                    "--duplicate-of: found %d, which decision %d calls a duplicate of %s itself, so that neither would count; expected the entry that counts, such as %s"
                                            .formatted(of.number(), d.id(), d.value(), d.value()));
                        });
    }
}
