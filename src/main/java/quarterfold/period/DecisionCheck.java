package quarterfold.period;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import quarterfold.law.Dated;
import quarterfold.law.Fact;
import quarterfold.law.Law;
import quarterfold.law.TreatmentRow;
import quarterfold.ledger.Coded;
import quarterfold.ledger.Decision;
import quarterfold.ledger.Decision.Action;
import quarterfold.ledger.Decision.Target;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Evidence;
import quarterfold.ledger.Kind;
import quarterfold.ledger.KindDecisions;
import quarterfold.ledger.Ledger;
import quarterfold.ledger.LedgerException;
import quarterfold.ledger.LedgerException.Fault;
import quarterfold.ledger.RaisedQuery;
import quarterfold.ledger.StatedFacts;

/**
 * Refuses a decision that does not fit the ledger or the law, so that what is recorded can always
 * be applied. What the words of the command say wrongly is {@code USAGE}; what the ledger does not
 * have is {@code BAD_INPUT}.
 */
final class DecisionCheck {

    private final Ledger ledger;
    private final Law law;
    private final Decision decision;
    private final List<Entry> about;

    /** {@code about}: an entry of each kind and day that the decision is about. */
    DecisionCheck(Ledger ledger, Law law, Decision decision, List<Entry> about) {
        this.ledger = ledger;
        this.law = law;
        this.decision = decision;
        this.about = about;
    }

    /**
     * @throws LedgerException saying the place, what was found and what was expected
     */
    void check() throws LedgerException {
        actionFitsTarget();
        switch (decision.action()) {
            case TREAT_AS -> treatment();
            case STATE -> fact();
            case EVIDENCE_SEEN -> evidence();
            case DISALLOW -> disallowed();
            case DUPLICATE_OF -> duplicate();
            case UNDO -> undone();
            case SET_ASIDE -> {}
        }
    }

    private void actionFitsTarget() {
        Action action = decision.action();
        boolean onItself = action == Action.SET_ASIDE || action == Action.UNDO || isKindOfRows();
        if (decision.target() == Target.QUERY && !onItself) {
            throw usage(
                    "--query: found %s with it; expected --set-aside alone, or the entry the question is about, such as --entry 4"
                            .formatted(option(action)));
        }
        boolean ofMany = decision.target() == Target.PARTY || decision.target() == Target.PRODUCT;
        if (ofMany && KindDecisions.isOne(decision)) {
            throw usage(
                    "--state: found '%s' with %s; expected one entry, such as --entry 4, or with --query the question that asks what rows are"
                            .formatted(decision.value(), option(decision.target())));
        }
        if (action == Action.DUPLICATE_OF && decision.target() != Target.ENTRY) {
            throw usage(
                    "--duplicate-of: found %s with it; expected one entry, such as --entry 4"
                            .formatted(option(decision.target())));
        }
    }

    /** What the rows are that a question asks about is decided on the question. */
    private boolean isKindOfRows() {
        return KindDecisions.isOne(decision)
                && RaisedQuery.Name.parse(decision.about())
                        .filter(RaisedQuery.Name::isOfKind)
                        .isPresent();
    }

    /** Every entry it is about must be of a kind that some row of the treatment takes. */
    private void treatment() {
        String treatment = decision.value();
        for (Entry entry : about) {
            List<String> fitting =
                    law.treatments().rows().stream()
                            .filter(row -> row.isInForce(entry.taxPoint()))
                            .filter(row -> takes(row, entry.kind()))
                            .filter(row -> !row.value().when().containsKey(Fact.DECIDED))
                            .map(row -> row.value().treatment())
                            .distinct()
                            .sorted()
                            .toList();
            if (!fitting.contains(treatment)) {
                throw usage(
                        "--treat-as: found '%s'; expected a treatment of treatments.csv for a row of kind %s on %s: %s, such as %s"
                                .formatted(
                                        treatment,
                                        entry.kind().code(),
                                        entry.taxPoint(),
                                        String.join(", ", fitting),
                                        fitting.isEmpty() ? "none" : fitting.get(0)));
            }
        }
    }

    private static boolean takes(Dated<TreatmentRow> row, Kind kind) {
        return Optional.ofNullable(row.value().when().get(Fact.KIND))
                .map(kinds -> kinds.contains(kind.code()))
                .orElse(true);
    }

    private void fact() {
        String stated = decision.value();
        int at = stated.indexOf('=');
        String field = at < 0 ? stated : stated.substring(0, at);
        if (at < 0 || !StatedFacts.fields().contains(field)) {
            throw usage(
                    "--state: found '%s'; expected FIELD=VALUE with a field of %s, such as party_country=GB"
                            .formatted(stated, String.join(", ", StatedFacts.fields())));
        }
        if (!StatedFacts.isOne(stated)) {
            throw usage(
                    "--state: found '%s'; expected for %s %s"
                            .formatted(stated, field, StatedFacts.expected(field)));
        }
    }

    private void evidence() {
        List<String> kinds =
                Arrays.stream(Evidence.values())
                        .filter(e -> e != Evidence.MISSING && e != Evidence.UNSTATED)
                        .map(Evidence::code)
                        .filter(code -> law.evidence(code, decision.day()).isPresent())
                        .toList();
        if (!kinds.contains(decision.value())) {
            throw usage(
                    "--evidence-seen: found '%s'; expected a kind of evidence.csv: %s, such as invoice"
                            .formatted(decision.value(), String.join(", ", kinds)));
        }
    }

    private void disallowed() {
        about.stream()
                .map(Entry::kind)
                .filter(k -> k.side() != Kind.Side.PURCHASES && k.side() != Kind.Side.IMPORTS)
                .findFirst()
                .ifPresent(
                        kind -> {
                            throw bad(
                                    "--disallow: found a row of kind %s; expected a purchase, an expense, a fee or an import, whose VAT could be reclaimed, such as %s"
                                            .formatted(kind.code(), Kind.EXPENSE.code()));
                        });
    }

    private void duplicate() {
        new DuplicateCheck(ledger, decision).check(about.get(0));
    }

    private void undone() {
        List<Decision> all = ledger.decisions();
        Predicate<Decision> holds = d -> !Decision.undone(all).containsKey(d.id());
        if (all.stream()
                .filter(holds)
                .noneMatch(d -> Long.toString(d.id()).equals(decision.value()))) {
            String which =
                    all.stream()
                            .filter(holds)
                            .max(Comparator.comparing(Decision::id))
                            .map(d -> "the number of a decision that holds, such as " + d.id())
                            .orElse("a decision to undo, and there is none");
            throw bad("--undo: found %s; expected %s".formatted(decision.value(), which));
        }
    }

    /** The party, product or entry must be in the ledger. */
    static LedgerException absent(Decision decision, Ledger ledger) {
        return switch (decision.target()) {
            case ENTRY ->
                    bad(
                            "--entry: found %s; expected the number of an entry, 1 to %d"
                                    .formatted(decision.about(), ledger.lastEntry()));
            case PARTY ->
                    bad(
                            "--party: found '%s'; expected a party or channel as the ledger has it%s"
                                    .formatted(
                                            decision.about(),
                                            near(
                                                    decision.about(),
                                                    ledger,
                                                    e ->
                                                            List.of(
                                                                    e.profile().party(),
                                                                    e.profile().channel()))));
            case PRODUCT ->
                    bad(
                            "--product: found '%s'; expected a product's code as the ledger has it%s"
                                    .formatted(
                                            decision.about(),
                                            near(
                                                    decision.about(),
                                                    ledger,
                                                    e -> List.of(e.line().item().product()))));
            case QUERY ->
                    bad(
                            "--query: found '%s'; expected the name of a query that is asked, as the command queries lists it"
                                    .formatted(decision.about()));
        };
    }

    /** A name of an entry. */
    private interface Names {
        List<String> of(Entry entry);
    }

    private static String near(String found, Ledger ledger, Names names) {
        List<String> known = new ArrayList<>();
        ledger.forEach(
                entry ->
                        names.of(entry).stream()
                                .filter(n -> !n.isEmpty() && !known.contains(n))
                                .forEach(known::add));
        String wanted = found.toLowerCase(Locale.ROOT);
        return known.stream()
                .filter(n -> n.toLowerCase(Locale.ROOT).startsWith(first(wanted)))
                .findFirst()
                .or(() -> known.stream().sorted().findFirst())
                .map(n -> ", such as " + n)
                .orElse(", and it has none");
    }

    private static String first(String text) {
        return text.substring(0, Math.min(3, text.length()));
    }

    private static String option(Coded coded) {
        return "--" + coded.code();
    }

    private static LedgerException usage(String message) {
        return new LedgerException(Fault.USAGE, message);
    }

    static LedgerException bad(String message) {
        return new LedgerException(Fault.BAD_INPUT, message);
    }
}
