package quarterfold.intake;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Chooses which identity of a table says what a row comes to, and which of its columns that is: the
 * one in which tax and delivery are added and discounts and fees taken off, which leaves least
 * money unexplained and goes into most detail.
 */
final class IdentityChoice {
    private static final List<Role> ROOTS = List.of(Role.PAYOUT, Role.NET, Role.AMOUNT, Role.TOTAL);

    /** What the parts of a row are, seen from its price. */
    private static final List<Role> PRICES = List.of(Role.GOODS, Role.TOTAL, Role.AMOUNT, Role.NET);

    private final List<Column> columns;
    private final List<Column> money;
    private final List<Equation> equations;

    /** {@code rank}: lower is better. */
    record Choice(Column root, Equation equation, long rank) {}

    IdentityChoice(List<Column> columns, List<Column> money, List<Equation> equations) {
        this.columns = columns;
        this.money = money;
        this.equations = equations;
    }

    Optional<Choice> best() {
        Optional<Choice> best = Optional.empty();
        for (Role role : ROOTS) {
            Optional<Column> root =
                    columns.stream().filter(c -> c.role() == role && c.hasValues()).findFirst();
            for (Equation equation : root.isPresent() ? equations : List.<Equation>of()) {
                if (equation.sign(root.get()) == 0 || equation.columns().size() < 3) {
                    continue;
                }
                long rank = rank(root.get(), equation);
                if (best.filter(b -> b.rank() <= rank).isEmpty()) {
                    best = Optional.of(new Choice(root.get(), equation, rank));
                }
            }
        }
        return best;
    }

    private long rank(Column root, Equation equation) {
        int score = 0;
        for (Column column : equation.columns()) {
            score += column.role().isPart() ? 2 : column == root ? 0 : -1;
        }
        score -= equation.broken().isEmpty() ? 0 : 3;
        long left = left(equation) + (equation.broken().isEmpty() ? 0 : 2);
        return (isTurned(root, equation) ? 1_000_000 : 0)
                + left * 10_000
                + ROOTS.indexOf(root.role()) * 1_000L
                - score;
    }

    /** How many columns of money it neither has nor explains. */
    private long left(Equation equation) {
        return money.stream()
                .filter(c -> !c.isZero() && equation.sign(c) == 0 && c.role() != Role.TAX)
                .filter(
                        c ->
                                equations.stream()
                                        .noneMatch(
                                                e ->
                                                        e.sign(c) != 0
                                                                && e.broken().isEmpty()
                                                                && e.columns().stream()
                                                                        .allMatch(
                                                                                o ->
                                                                                        o == c
                                                                                                || equation
                                                                                                                .sign(
                                                                                                                        o)
                                                                                                        != 0)))
                .count();
    }

    /** Whether tax or delivery would be taken off, or a discount or fee added. */
    private static boolean isTurned(Column root, Equation equation) {
        List<MoneyPlan.Part> parts = parts(root, equation);
        Optional<MoneyPlan.Part> price = price(parts);
        if (price.isEmpty() || isNetOfGross(root, parts)) {
            return false;
        }
        for (MoneyPlan.Part part : parts) {
            int way = way(part, price.get());
            boolean wrong =
                    switch (part.column().role()) {
                        case TAX, DELIVERY, DELIVERY_TAX -> way < 0;
                        case DISCOUNT, FEE, ADVERT, WITHHELD ->
                                way > 0 && !part.column().isMaybeDelivery();
                        default -> false;
                    };
            if (wrong) {
                return true;
            }
        }
        return false;
    }

    static List<MoneyPlan.Part> parts(Column root, Equation equation) {
        return equation.columns().stream()
                .filter(c -> c != root)
                .map(c -> new MoneyPlan.Part(c, -equation.sign(c) * equation.sign(root)))
                .collect(Collectors.toList());
    }

    /** The part that is what the goods cost. */
    static Optional<MoneyPlan.Part> price(List<MoneyPlan.Part> parts) {
        return PRICES.stream()
                .flatMap(role -> parts.stream().filter(p -> p.column().role() == role))
                .findFirst();
    }

    /** Positive where a part mostly goes the way of the price on the same row, else negative. */
    static int way(MoneyPlan.Part part, MoneyPlan.Part price) {
        int way = 0;
        for (int row = 0; row < part.column().values().length; row++) {
            way +=
                    Long.signum(part.sign() * part.column().values()[row])
                            * Long.signum(price.sign() * price.column().values()[row]);
        }
        return way;
    }

    /** Gross - VAT = net. */
    static boolean isNetOfGross(Column root, List<MoneyPlan.Part> parts) {
        return root.role() == Role.NET
                && are(parts, EnumSet.of(Role.TOTAL, Role.TAX))
                && parts.stream()
                        .allMatch(p -> p.sign() == (p.column().role() == Role.TAX ? -1 : 1));
    }

    /** Net + VAT = gross, as a document prints it. */
    static boolean isPrinted(Column root, List<MoneyPlan.Part> parts) {
        return root.role() == Role.TOTAL
                && (are(parts, EnumSet.of(Role.NET, Role.TAX))
                        || are(parts, EnumSet.of(Role.AMOUNT, Role.TAX)))
                && parts.stream().allMatch(p -> p.sign() == 1);
    }

    private static boolean are(List<MoneyPlan.Part> parts, Set<Role> roles) {
        return parts.size() == 2
                && parts.stream()
                        .map(p -> p.column().role())
                        .collect(Collectors.toSet())
                        .equals(roles);
    }
}
