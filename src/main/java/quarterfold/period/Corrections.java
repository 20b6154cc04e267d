package quarterfold.period;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeMap;
import quarterfold.law.Law;
import quarterfold.ledger.Decision;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Particular;
import quarterfold.ledger.Settings;
import quarterfold.money.Amount;
import quarterfold.money.Rounding;
import quarterfold.treatment.Context;
import quarterfold.treatment.Query;
import quarterfold.treatment.Questions;
import quarterfold.treatment.TakenUp;
import quarterfold.treatment.Treated;

/**
 * Puts errors of closed returns right on the return for the period in which they are discovered:
 * VAT Regulations 1995 reg 34. They are netted over the period; up to the limit each side's figure
 * goes to its boxes, above it all of them are told to the tax authority apart. Deliberate errors
 * never go on a later return (HMRC manuals VAEC7110 and VAEC7150).
 */
final class Corrections {

    private static final String VALUES_TOO = "errors-in-boxes-6-to-9=yes";
    private static final String ALL_APART = "errors-told-separately=yes";

    private final Context context;
    private final Law law;
    private final Settings settings;
    private final Questions questions;
    private final Period period;
    private final Sides sides;

    /** What a return takes up: what it shows, the worksheet's rows, and what it asks. */
    record Taken(
            List<Treated> treated,
            List<Correction> rows,
            List<Query> queries,
            Optional<CorrectionLimit> limit) {}

    Corrections(Context context, Period period) {
        this.context = context;
        this.law = context.law();
        this.settings = context.settings();
        this.questions = new Questions(context);
        this.period = period;
        this.sides = Sides.of(law.form(period.end()));
    }

    /** One of the wrongs as it is taken up so far. */
    private record Classed(Wrong wrong, TakenUp how, String why) {}

    /**
     * @param figures the figures of the return without them, by box id
     */
    Taken take(List<Wrong> wrongs, Map<String, Amount> figures) {
        List<Query> queries = new ArrayList<>();
        List<Classed> classed = new ArrayList<>();
        for (Wrong wrong : wrongs) {
            classed.add(classed(wrong, queries));
        }
        Optional<CorrectionLimit> limit =
                CorrectionLimit.of(law, settings.choices(), period.start(), figures);
        Amount net = net(classed);
        Optional<String> apart = apart(net, limit);
        boolean any = classed.stream().anyMatch(c -> c.how() == TakenUp.ERROR);
        if (any && apart.isPresent()) {
            queries.add(
                    questions.ask(
                            "errors-told-separately",
                            period.name().toString(),
                            net,
                            Map.of("why", apart.get())));
        }
        List<Correction> rows = new ArrayList<>();
        IdentityHashMap<Treated, List<Correction>> byEntry = new IdentityHashMap<>();
        List<Treated> order = new ArrayList<>();
        for (Classed one : classed) {
            Correction row = row(settled(one, apart));
            if (!byEntry.containsKey(one.wrong().treated())) {
                order.add(one.wrong().treated());
            }
            byEntry.computeIfAbsent(one.wrong().treated(), t -> new ArrayList<>()).add(row);
            if (row.takenUp() != TakenUp.NOWHERE) {
                rows.add(row);
            }
        }
        List<Treated> shown =
                order.stream().map(t -> shown(t, byEntry.getOrDefault(t, List.of()))).toList();
        return new Taken(shown, rows, queries, limit);
    }

    /**
     * Errors as far as each alone says how it is taken up; what is within the limit comes later.
     */
    private Classed classed(Wrong wrong, List<Query> queries) {
        Entry entry = wrong.treated().entry();
        Map<String, Amount> difference = wrong.difference();
        if (wrong.treated().takenUp() == TakenUp.TRUED_UP) {
            return new Classed(wrong, TakenUp.TRUED_UP, TakenUp.TRUED_UP.words());
        }
        if (((wrong.late() || wrong.rateCame()) && isOfFlatRate(wrong))
                || difference.containsKey(FlatRateVat.TURNOVER)) {
            queries.add(asked("late-under-flat-rate", wrong, Map.of()));
            return new Classed(wrong, TakenUp.NOWHERE, "");
        }
        if (difference.isEmpty()) {
            return new Classed(wrong, TakenUp.NOWHERE, "");
        }
        Amount output = sides.outputOf(difference);
        Amount input = sides.inputOf(difference);
        String of = wrong.of().period().toString();
        if (stated(entry).equals("deliberate")) {
            queries.add(asked("error-deliberate", wrong, Map.of("of", of)));
            return new Classed(
                    wrong,
                    TakenUp.DISCLOSED,
                    "deliberate: never on a later return (HMRC manual VAEC7110)");
        }
        ErrorTime time = ErrorTime.of(law, wrong.of(), period, output, input);
        if (time.over()) {
            String last = time.last().map(Object::toString).orElse("");
            queries.add(asked("error-too-old", wrong, Map.of("of", of, "last", last)));
            return new Classed(wrong, TakenUp.TOO_OLD, "the time for it ended on " + last);
        }
        time.strict()
                .ifPresent(
                        strict ->
                                queries.add(
                                        asked(
                                                "late-claim-time",
                                                wrong,
                                                Map.of(
                                                        "of", of,
                                                        "latest",
                                                                time.last()
                                                                        .map(Object::toString)
                                                                        .orElse(""),
                                                        "strict", strict.toString()))));
        if (entry.kind() == Kind.IMPORT_VAT_POSTPONED && output.equals(input)) {
            return new Classed(wrong, TakenUp.NIL_NET, reason(wrong));
        }
        if (wrong.late() && input.signum() > 0 && output.isZero() && isBought(entry)) {
            queries.add(asked("late-purchase", wrong, Map.of()));
        }
        return new Classed(wrong, TakenUp.ERROR, reason(wrong));
    }

    private boolean isOfFlatRate(Wrong wrong) {
        return wrong.treated().entry().kind().side() == Kind.Side.SALES
                && settings.schemeOn(wrong.day()).equals("flat-rate");
    }

    /** A document that came late could make it a late claim; not where a day is stated already. */
    private boolean isBought(Entry entry) {
        return (entry.kind().side() == Kind.Side.PURCHASES || entry.kind() == Kind.IMPORT_VAT_PAID)
                && context.answers()
                        .stated(entry)
                        .line()
                        .particulars()
                        .word(Particular.HELD)
                        .isEmpty();
    }

    private String stated(Entry entry) {
        return context.answers()
                .stated(entry)
                .line()
                .particulars()
                .word(Particular.ERROR)
                .orElse("");
    }

    private Query asked(String code, Wrong wrong, Map<String, String> words) {
        Map<String, Amount> difference = wrong.difference();
        Amount vat = sides.outputOf(difference).minus(sides.inputOf(difference)).abs();
        Map<String, String> all = new TreeMap<>(words);
        all.put("amount", vat.rounded(Rounding.NEAREST_PENNY).toString());
        return questions.ask(code, wrong.treated().entry(), vat, all);
    }

    private String reason(Wrong wrong) {
        Entry entry = wrong.treated().entry();
        if (wrong.rateCame()) {
            return "its exchange rate came after the return of %s was closed"
                    .formatted(wrong.of().period());
        }
        if (!wrong.late()) {
            List<Decision> about = context.answers().about(entry);
            OptionalLong replaced = context.ties().imports().replacedBy(entry);
            if (replaced.isPresent()) {
                return "replaced by the amended document that begins with entry %d"
                        .formatted(replaced.getAsLong());
            }
            if (about.isEmpty() && isClaimedOnSettlements(entry)) {
                return "its fees are claimed on settlements too";
            }
            if (about.isEmpty() && isBilledImportVat(entry)) {
                return "its amount is the import VAT of an entry that came since";
            }
            return about.isEmpty()
                    ? "the decision it was closed with is undone"
                    : "decided since: " + about.get(about.size() - 1).why();
        }
        String came = "came after the return of %s was closed".formatted(wrong.of().period());
        return switch (entry.kind()) {
            case SALE_REFUND, DELIVERY_REFUND, DISCOUNT, DISCOUNT_REVERSED ->
                    came
                            + "; a price change that is missed in its period is an error (VAT Regulations 1995 reg 38(7))";
            default -> came;
        };
    }

    private boolean isBilledImportVat(Entry entry) {
        return context.together()
                .claims()
                .filter(claims -> claims.importVatBilledBefore().contains(entry.number()))
                .isPresent();
    }

    private boolean isClaimedOnSettlements(Entry entry) {
        return context.together()
                .claims()
                .filter(claims -> claims.feesClaimedAgain().contains(entry.number()))
                .isPresent();
    }

    /** VAT owed to the tax authority less VAT owed by it, over all errors that are netted. */
    private Amount net(List<Classed> classed) {
        Amount output = Amount.ZERO;
        Amount input = Amount.ZERO;
        for (Classed one : classed) {
            if (one.how() == TakenUp.ERROR) {
                output = output.plus(sides.outputOf(one.wrong().difference()));
                input = input.plus(sides.inputOf(one.wrong().difference()));
            }
        }
        return output.rounded(Rounding.NEAREST_PENNY).minus(input.rounded(Rounding.NEAREST_PENNY));
    }

    /** Why all errors are told apart, if they are. */
    private Optional<String> apart(Amount net, Optional<CorrectionLimit> limit) {
        if (law.choices().holds(ALL_APART, settings.choices())) {
            return Optional.of("the book tells errors separately whatever their amount");
        }
        if (limit.isEmpty()) {
            return Optional.of("no limit is known for a period that begins on " + period.start());
        }
        return limit.get().allows(net)
                ? Optional.empty()
                : Optional.of(
                        "their net is above the limit of %s, %s"
                                .formatted(limit.get().amount(), limit.get().why()));
    }

    private Classed settled(Classed one, Optional<String> apart) {
        if (one.how() != TakenUp.ERROR) {
            return one;
        }
        if (apart.isPresent()) {
            return new Classed(one.wrong(), TakenUp.DISCLOSED, one.why() + "; " + apart.get());
        }
        return stated(one.wrong().treated().entry()).equals("separate")
                ? new Classed(
                        one.wrong(), TakenUp.DISCLOSED, one.why() + "; told separately by choice")
                : one;
    }

    private Correction row(Classed one) {
        Wrong wrong = one.wrong();
        return new Correction(
                wrong.treated().entry().number(),
                wrong.day(),
                wrong.cause(),
                wrong.of().period(),
                one.how(),
                wrong.declared(),
                wrong.right(),
                boxes(one),
                one.why());
    }

    private Map<String, Amount> boxes(Classed one) {
        Map<String, Amount> boxes = new TreeMap<>(one.wrong().difference());
        switch (one.how()) {
            case TRUED_UP -> {}
            case ERROR, NIL_NET -> {
                if (!law.choices().holds(VALUES_TOO, settings.choices())) {
                    boxes.keySet().removeIf(box -> !sides.has(box));
                }
            }
            default -> boxes.clear();
        }
        return boxes;
    }

    private static Treated shown(Treated treated, List<Correction> rows) {
        Map<String, Amount> boxes = new LinkedHashMap<>();
        TakenUp how = rows.get(0).takenUp();
        for (Correction row : rows) {
            how = row.takenUp().compareTo(how) < 0 ? row.takenUp() : how;
            row.boxes().forEach((box, amount) -> boxes.merge(box, amount, Amount::plus));
        }
        boxes.values().removeIf(Amount::isZero);
        return treated.takenUp(how, boxes);
    }
}
