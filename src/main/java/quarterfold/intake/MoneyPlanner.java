package quarterfold.intake;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import quarterfold.money.Amount;

/** Finds which number columns make the money of a row, by the identities they keep. */
final class MoneyPlanner {
    private static final int TOLD = 20;
    private static final List<Role> ROOTS = List.of(Role.NET, Role.AMOUNT, Role.TOTAL);
    private static final Set<Role> OUTSIDE =
            EnumSet.of(
                    Role.QUANTITY,
                    Role.UNIT_PRICE,
                    Role.BALANCE,
                    Role.PAYOUT,
                    Role.DEBIT,
                    Role.CREDIT);

    private final List<Column> columns;
    private final List<Grid.Line> rows;
    private final Findings findings;
    private List<Equation> equations = List.of();

    MoneyPlanner(List<Column> columns, List<Grid.Line> rows, Findings findings) {
        this.columns = columns;
        this.rows = rows;
        this.findings = findings;
    }

    /** Nothing where no way was found; what is open or in the way is then told. */
    Optional<MoneyPlan> plan() {
        List<Column> money =
                withoutBalance(
                        columns.stream()
                                .filter(c -> c.hasValues() && !OUTSIDE.contains(c.role()))
                                .toList());
        equations = Equation.find(money, rows.size());
        Optional<MoneyPlan> plan =
                pair().or(this::byEquation).or(() -> single(money)).or(this::product);
        if (plan.isEmpty()) {
            findings.unsound(
                    money.isEmpty()
                            ? "found no column of amounts; expected one, such as Amount"
                            : "found %s, which keep no identity from row to row, such as gross - fee = net; nothing shows which of them are the money"
                                    .formatted(names(money)));
            return plan;
        }
        leftOver(money, plan.get());
        plan.get().equation().ifPresent(e -> tell(plan.get(), e));
        return plan;
    }

    /** Without a column that has no name, but moves by what another says on every row. */
    private static List<Column> withoutBalance(List<Column> money) {
        for (Column balance : money) {
            for (Column moves : money) {
                if (balance != moves
                        && balance.role() == Role.NONE
                        && (isBalance(balance.values(), moves.values(), 1)
                                || isBalance(balance.values(), moves.values(), 0))) {
                    balance.setRole(Role.BALANCE);
                    return money.stream().filter(c -> c != balance).toList();
                }
            }
        }
        return money;
    }

    /** {@code newer}: 1 where the newer of two rows is the lower, 0 where it is the upper. */
    private static boolean isBalance(long[] balance, long[] moves, int newer) {
        for (int row = 1; row < balance.length; row++) {
            long moved = balance[row - 1 + newer] - balance[row - newer];
            if (moved != moves[row - 1 + newer]) {
                return false;
            }
        }
        return balance.length >= 4;
    }

    private Optional<Column> first(Role role) {
        return columns.stream().filter(c -> c.role() == role && c.hasValues()).findFirst();
    }

    private Optional<MoneyPlan> pair() {
        Optional<Column> debit = first(Role.DEBIT);
        Optional<Column> credit = first(Role.CREDIT);
        if (debit.isEmpty() || credit.isEmpty()) {
            return Optional.empty();
        }
        long[] out = debit.get().values();
        long[] in = credit.get().values();
        boolean positive = true;
        boolean negative = true;
        for (int row = 0; row < out.length; row++) {
            if (out[row] != 0 && in[row] != 0) {
                findings.fault(
                        "%s: found money both in '%s' and in '%s'"
                                .formatted(at(row), debit.get().name(), credit.get().name()));
            }
            positive &= out[row] >= 0;
            negative &= out[row] <= 0;
        }
        if (!positive && !negative) {
            findings.unsound(
                    "found both signs in '%s'; expected one, such as all without a minus"
                            .formatted(debit.get().name()));
        }
        return Optional.of(
                new MoneyPlan(
                        MoneyPlan.Shape.PAIR,
                        List.of(
                                new MoneyPlan.Part(credit.get(), 1),
                                new MoneyPlan.Part(debit.get(), positive ? -1 : 1)),
                        Optional.empty(),
                        Optional.empty()));
    }

    private Optional<MoneyPlan> byEquation() {
        for (Role role : ROOTS) {
            Optional<Column> root = first(role);
            Optional<Equation> best = root.flatMap(this::best);
            if (best.isPresent()) {
                return Optional.of(plan(root.get(), best.get()));
            }
        }
        return Optional.empty();
    }

    /** The equation of a root that goes into most detail. */
    private Optional<Equation> best(Column root) {
        Optional<Equation> best = Optional.empty();
        int most = Integer.MIN_VALUE;
        for (Equation equation : equations) {
            if (equation.sign(root) == 0 || equation.columns().size() < 3) {
                continue;
            }
            int score = 0;
            for (Column column : equation.columns()) {
                score += column.role().isPart() ? 2 : column == root ? 0 : -1;
            }
            score -= equation.broken().isEmpty() ? 0 : 3;
            if (score > most) {
                most = score;
                best = Optional.of(equation);
            }
        }
        return best;
    }

    private MoneyPlan plan(Column root, Equation equation) {
        List<MoneyPlan.Part> parts = new ArrayList<>();
        for (Column column : equation.columns()) {
            if (column != root) {
                parts.add(new MoneyPlan.Part(column, -equation.sign(column) * equation.sign(root)));
            }
        }
        Set<Role> roles = parts.stream().map(p -> p.column().role()).collect(Collectors.toSet());
        boolean document = isDocument(root, roles, parts);
        if (document && root.role() == Role.NET) {
            // gross - VAT = net: the same identity, seen from the net
            Column gross = byRole(parts, Role.TOTAL);
            return new MoneyPlan(
                    MoneyPlan.Shape.DOCUMENT,
                    List.of(
                            new MoneyPlan.Part(root, 1),
                            new MoneyPlan.Part(byRole(parts, Role.TAX), 1)),
                    Optional.of(gross),
                    Optional.of(equation));
        }
        boolean said = columns.stream().anyMatch(c -> c.role() == Role.TYPE);
        for (MoneyPlan.Part part : parts) {
            if (!said) {
                askPart(part.column(), root, findings);
            }
        }
        return new MoneyPlan(MoneyPlan.Shape.WIDE, parts, Optional.of(root), Optional.of(equation));
    }

    private static Column byRole(List<MoneyPlan.Part> parts, Role role) {
        return parts.stream()
                .map(MoneyPlan.Part::column)
                .filter(c -> c.role() == role)
                .findFirst()
                .orElseThrow();
    }

    private static boolean isDocument(Column root, Set<Role> roles, List<MoneyPlan.Part> parts) {
        return root.role() == Role.NET
                && roles.equals(EnumSet.of(Role.TOTAL, Role.TAX))
                && parts.size() == 2
                && parts.stream()
                        .allMatch(p -> p.sign() == (p.column().role() == Role.TAX ? -1 : 1));
    }

    /** A part whose name does not say what it is must be told. */
    static void askPart(Column column, Column root, Findings findings) {
        if (column.role() != Role.NONE) {
            return;
        }
        findings.ask(
                        new Question(
                                "column/" + column.reference(),
                                "'%s' is part of '%s' on every row; what is it?"
                                        .formatted(column.reference(), root.reference()),
                                List.of(
                                        "goods",
                                        "delivery",
                                        "discount",
                                        "refund",
                                        "tax",
                                        "withheld",
                                        "fee",
                                        "advert"),
                                true))
                .ifPresent(answer -> column.setRole(Role.of(answer)));
    }

    private Optional<MoneyPlan> single(List<Column> money) {
        List<Column> amounts = money.stream().filter(c -> !c.isZero()).toList();
        Optional<Column> amount =
                first(Role.AMOUNT)
                        .filter(a -> alike(a, amounts))
                        .or(
                                () ->
                                        amounts.size() == 1
                                                ? Optional.of(amounts.get(0))
                                                : Optional.empty())
                        .or(() -> first(Role.TOTAL).filter(t -> alike(t, amounts)))
                        .or(() -> first(Role.NET).filter(t -> alike(t, amounts)));
        return amount.map(
                c ->
                        new MoneyPlan(
                                MoneyPlan.Shape.SINGLE,
                                List.of(new MoneyPlan.Part(c, 1)),
                                Optional.empty(),
                                Optional.empty()));
    }

    /** Whether all other columns say the same, or are the VAT within. */
    private boolean alike(Column amount, List<Column> others) {
        return others.stream()
                .allMatch(
                        o ->
                                o == amount
                                        || o.role() == Role.TAX
                                        || Arrays.equals(o.values(), amount.values()));
    }

    private Optional<MoneyPlan> product() {
        Optional<Column> quantity = first(Role.QUANTITY);
        Optional<Column> price = first(Role.UNIT_PRICE).or(() -> first(Role.GOODS));
        if (quantity.isEmpty() || price.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(
                new MoneyPlan(
                        MoneyPlan.Shape.PRODUCT,
                        List.of(
                                new MoneyPlan.Part(quantity.get(), 1),
                                new MoneyPlan.Part(price.get(), 1)),
                        Optional.empty(),
                        Optional.empty()));
    }

    /** Every column of money must be entered, be a sum, or be said to be of no account. */
    private void leftOver(List<Column> money, MoneyPlan plan) {
        for (Column column : money) {
            boolean used =
                    plan.parts().stream().anyMatch(p -> p.column() == column)
                            || plan.root().filter(r -> r == column).isPresent();
            if (used || column.isZero() || isExplained(column, plan)) {
                continue;
            }
            findings.ask(
                    new Question(
                            "column/" + column.reference(),
                            "'%s' holds %s that no sum of the row explains; is it of no account?"
                                    .formatted(column.reference(), new Amount(column.sum())),
                            List.of("ignored"),
                            true));
        }
    }

    private boolean isExplained(Column column, MoneyPlan plan) {
        for (Equation equation : equations) {
            if (equation.sign(column) != 0 && equation.broken().isEmpty()) {
                boolean known =
                        equation.columns().stream()
                                .allMatch(
                                        c ->
                                                c == column
                                                        || plan.root()
                                                                .filter(r -> r == c)
                                                                .isPresent()
                                                        || plan.parts().stream()
                                                                .anyMatch(p -> p.column() == c));
                if (known) {
                    findings.note(
                            "'%s' is not entered: %s"
                                    .formatted(column.reference(), said(equation, column)));
                    return true;
                }
            }
        }
        if (column.role() == Role.TAX && isWithin(column, plan)) {
            findings.note(
                    "'%s' is not entered: it is tax within the amounts, and kept as a note"
                            .formatted(column.reference()));
            return true;
        }
        return false;
    }

    /** Whether the tax is never more than a quarter of the row's money, and of its sign. */
    private static boolean isWithin(Column tax, MoneyPlan plan) {
        for (int row = 0; row < tax.values().length; row++) {
            long largest = 0;
            for (MoneyPlan.Part part : plan.parts()) {
                largest = Math.max(largest, Math.abs(part.column().values()[row]));
            }
            if (Math.abs(tax.values()[row]) * 4 > largest) {
                return false;
            }
        }
        return true;
    }

    private void tell(MoneyPlan plan, Equation equation) {
        Column root = plan.root().orElseThrow();
        int held = rows.size() - equation.broken().size();
        String said = "%s in %,d of %,d rows".formatted(said(equation, root), held, rows.size());
        if (equation.broken().isEmpty() && rows.size() >= 3) {
            findings.prove(said);
        } else if (equation.broken().isEmpty()) {
            findings.fault(said + ": too few to prove it");
        } else {
            findings.fault(said);
        }
        equation.broken().stream()
                .limit(TOLD)
                .forEach(
                        row ->
                                findings.fault(
                                        "%s: found '%s' in '%s'; expected %s, as the other columns make it"
                                                .formatted(
                                                        at(row),
                                                        new Amount(root.values()[row]),
                                                        root.reference(),
                                                        new Amount(equation.expected(root, row)))));
    }

    /** Such as {@code gross - commission = net}. */
    static String said(Equation equation, Column root) {
        List<Column> others = equation.columns().stream().filter(c -> c != root).toList();
        StringBuilder said = new StringBuilder();
        for (boolean plus : new boolean[] {true, false}) {
            for (Column column : others) {
                boolean added = -equation.sign(column) * equation.sign(root) > 0;
                if (added == plus) {
                    said.append(
                                    plus
                                            ? (said.length() == 0 ? "" : " + ")
                                            : said.length() == 0 ? "- " : " - ")
                            .append(column.reference());
                }
            }
        }
        return said + " = " + root.reference();
    }

    private String at(int row) {
        return "row " + rows.get(row).number();
    }

    static String names(List<Column> columns) {
        return columns.stream()
                .map(c -> "'" + c.reference() + "'")
                .collect(Collectors.joining(", "));
    }

    /** The rows, from 0, whose money of the plan is not nothing. */
    static int[] moving(MoneyPlan plan, int rows) {
        return IntStream.range(0, rows).filter(r -> plan.money(r) != 0).toArray();
    }
}
