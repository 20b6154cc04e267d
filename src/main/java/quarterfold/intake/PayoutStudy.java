package quarterfold.intake;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import quarterfold.money.Amount;

/** Finds the column that repeats a settlement's payout on its rows. */
final class PayoutStudy {

    /** What a settlement's rows state and come to, in ten-thousandths. */
    private static final class Settlement {
        private final Map<Long, Integer> stated = new LinkedHashMap<>();
        private long sum;

        /** How many rows state what most of them do. */
        int agreeing() {
            return stated.values().stream().mapToInt(Integer::intValue).max().orElse(0);
        }

        int stating() {
            return stated.values().stream().mapToInt(Integer::intValue).sum();
        }

        boolean isTurned() {
            return stated.isEmpty() || (stated.size() == 1 && stated.containsKey(-sum));
        }
    }

    private final List<Column> columns;
    private final RuleStudy rules;
    private final Findings findings;

    private PayoutStudy(List<Column> columns, RuleStudy rules, Findings findings) {
        this.columns = columns;
        this.rules = rules;
        this.findings = findings;
    }

    /**
     * The column, where there is one; whether its payouts tie is for the trial to say. A column of
     * payouts that is none is told.
     */
    static Optional<Column> find(List<Column> columns, RuleStudy rules, Findings findings) {
        return columns.stream()
                .filter(c -> c.role() == Role.PAYOUT && c.hasValues() && !c.isZero())
                .filter(new PayoutStudy(columns, rules, findings)::repeats)
                .findFirst();
    }

    private boolean repeats(Column payout) {
        List<Settlement> settlements = settlements(payout);
        int stating = settlements.stream().mapToInt(Settlement::stating).sum();
        int agreeing = settlements.stream().mapToInt(Settlement::agreeing).sum();
        boolean several = settlements.stream().anyMatch(s -> s.sum != 0);
        if (agreeing < stating && agreeing * 5 < stating * 4) {
            if (columns.stream().anyMatch(c -> c.role() == Role.SETTLEMENT)) {
                findings.note(
                        "'%s' is not the same on the rows of a settlement: it is kept as a note, and nothing is held against it"
                                .formatted(payout.reference()));
            } else {
                findings.fault(
                        "'%s' is not what a row comes to, nor the same on all rows: is money taken off that no column shows?"
                                .formatted(payout.reference()));
            }
            return false;
        }
        if (several && settlements.stream().allMatch(Settlement::isTurned)) {
            findings.note(
                    "'%s' states each payout with the sign turned (%s): it is kept as a note, and nothing is held against it"
                            .formatted(payout.reference(), new Amount(first(settlements))));
            return false;
        }
        return true;
    }

    private static long first(List<Settlement> settlements) {
        return settlements.stream().flatMap(s -> s.stated.keySet().stream()).findFirst().orElse(0L);
    }

    private List<Settlement> settlements(Column payout) {
        List<Column> keys =
                columns.stream()
                        .filter(c -> c.role() == Role.SETTLEMENT || c.role() == Role.CURRENCY)
                        .toList();
        Map<List<String>, Settlement> settlements = new LinkedHashMap<>();
        for (int row = 0; row < payout.texts().size(); row++) {
            int at = row;
            List<String> key = keys.stream().map(c -> c.texts().get(at)).toList();
            Settlement settlement = settlements.computeIfAbsent(key, k -> new Settlement());
            String text = payout.texts().get(row);
            if (!text.isEmpty() && !NumberText.isNothing(text)) {
                settlement.stated.merge(payout.values()[row], 1, Integer::sum);
            }
            settlement.sum += rules.isPayout(row) ? 0 : rules.money(row);
        }
        return new ArrayList<>(settlements.values());
    }
}
