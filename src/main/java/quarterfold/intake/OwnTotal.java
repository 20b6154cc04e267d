package quarterfold.intake;

import java.util.Map;
import quarterfold.money.Amount;

/**
 * What the column that says what a row comes to has in all, with its own signs, beside what the
 * entries come to.
 *
 * @param column its name
 * @param sum as printed, in ten-thousandths
 */
record OwnTotal(String column, long sum) {

    /**
     * Told where they agree, and why where they do not.
     *
     * @param money of the entries by currency: a column of several has no sum
     */
    void hold(Map<String, Amount> money, Layout layout, Findings findings) {
        if (money.size() == 1) {
            hold(money.values().iterator().next(), layout, findings);
        }
    }

    private void hold(Amount entered, Layout layout, Findings findings) {
        long money = entered.tenThousandths();
        boolean document =
                layout.rules().stream().anyMatch(rule -> rule.signs(layout) != Layout.Signs.OWNER);
        if (money == sum) {
            findings.prove("'%s' comes to %s, and so do the entries".formatted(column, entered));
        } else if (money != -sum && document) {
            findings.note(
                    "'%s' comes to %s as printed, the entries to %s: amounts of kinds that take money away are printed without a minus"
                            .formatted(column, new Amount(sum), entered));
        } else if (!document) {
            findings.fault(
                    "the entries come to %s; expected %s, as '%s' has it"
                            .formatted(entered, new Amount(sum), column));
        }
    }
}
