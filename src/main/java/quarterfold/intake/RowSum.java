package quarterfold.intake;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What rows come to where no column says it: a price and what its neighbours' names say is added to
 * it or taken off. Nothing proves that, so it is asked.
 */
final class RowSum {
    private static final Set<Role> PRICES =
            EnumSet.of(Role.GOODS, Role.AMOUNT, Role.TOTAL, Role.NET);
    private static final Set<Role> BESIDE =
            EnumSet.of(Role.DELIVERY, Role.DISCOUNT, Role.FEE, Role.ADVERT);

    private final List<Column> money;
    private final Findings findings;
    private List<Column> leftOut = List.of();

    RowSum(List<Column> money, Findings findings) {
        this.money = money.stream().filter(c -> !c.isZero() && c.role() != Role.IGNORED).toList();
        this.findings = findings;
    }

    /** Nothing where the names do not tell, or the question is open. */
    Optional<MoneyPlan> plan() {
        List<Column> prices = money.stream().filter(c -> PRICES.contains(c.role())).toList();
        List<Column> taxes = money.stream().filter(c -> c.role() == Role.TAX).toList();
        List<Column> beside = money.stream().filter(c -> BESIDE.contains(c.role())).toList();
        if (prices.size() != 1
                || taxes.size() > 1
                || prices.size() + taxes.size() + beside.size() < Math.max(2, money.size())) {
            return Optional.empty();
        }
        Column price = prices.get(0);
        List<MoneyPlan.Part> parts = new ArrayList<>();
        parts.add(new MoneyPlan.Part(price, 1));
        beside.forEach(column -> askDelivery(column, parts.get(0)));
        if (!findings.canBeWritten()) {
            return Optional.empty();
        }
        beside.forEach(column -> parts.add(part(column, parts.get(0))));
        List<String> answers = new ArrayList<>(List.of("sum", "alone"));
        String said = said(parts);
        String asked = "is it %s (sum), or '%s' alone (alone)".formatted(said, price.reference());
        if (!taxes.isEmpty()) {
            answers.add("sum-and-tax");
            asked =
                    "is it %s with '%s' within it (sum), '%s' alone (alone), or %s + '%s' (sum-and-tax)"
                            .formatted(
                                    said,
                                    taxes.get(0).reference(),
                                    price.reference(),
                                    said,
                                    taxes.get(0).reference());
        }
        return findings.ask(
                        new Question(
                                "sum",
                                "no column says what a row comes to; " + asked + "?",
                                answers,
                                true))
                .map(answer -> plan(answer, parts, taxes));
    }

    /** Whether a column is not entered, as was answered. */
    boolean leavesOut(Column column) {
        return leftOut.contains(column);
    }

    private MoneyPlan plan(String answer, List<MoneyPlan.Part> parts, List<Column> taxes) {
        boolean alone = answer.equals("alone") || (answer.equals("sum") && parts.size() == 1);
        List<MoneyPlan.Part> entered = new ArrayList<>(alone ? parts.subList(0, 1) : parts);
        if (answer.equals("sum-and-tax")) {
            entered.add(new MoneyPlan.Part(taxes.get(0), 1));
        }
        leftOut =
                money.stream()
                        .filter(c -> entered.stream().noneMatch(p -> p.column() == c))
                        .toList();
        leftOut.forEach(
                c -> findings.note("'%s' is not entered, as answered".formatted(c.reference())));
        Column price = parts.get(0).column();
        if (alone && !price.factors().isEmpty()) {
            return MoneyPlan.product(price);
        }
        return new MoneyPlan(
                alone ? MoneyPlan.Shape.SINGLE : MoneyPlan.Shape.WIDE,
                entered,
                Optional.empty(),
                Optional.empty());
    }

    private void askDelivery(Column column, MoneyPlan.Part price) {
        if (column.isMaybeDelivery()
                && IdentityChoice.way(new MoneyPlan.Part(column, 1), price) > 0) {
            findings.ask(
                            new Question(
                                    "column/" + column.reference(),
                                    "is '%s' what buyers pay for delivery, or a fee?"
                                            .formatted(column.reference()),
                                    List.of("delivery", "fee"),
                                    true))
                    .ifPresent(a -> column.setRole(Role.of(a)));
        }
    }

    /** What is taken off has a minus, or goes with the price and is turned. */
    private static MoneyPlan.Part part(Column column, MoneyPlan.Part price) {
        MoneyPlan.Part printed = new MoneyPlan.Part(column, 1);
        boolean out = column.role() != Role.DELIVERY;
        return out && IdentityChoice.way(printed, price) > 0
                ? new MoneyPlan.Part(column, -1)
                : printed;
    }

    private static String said(List<MoneyPlan.Part> parts) {
        StringBuilder said = new StringBuilder();
        for (MoneyPlan.Part part : parts) {
            said.append(said.length() == 0 ? "" : part.sign() > 0 ? " + " : " - ")
                    .append("'")
                    .append(part.column().reference())
                    .append("'");
        }
        return said.toString();
    }
}
