package quarterfold.intake;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import quarterfold.money.Amount;

/** Finds which number columns make the money of a row, by the identities they keep. */
final class MoneyPlanner {
    private static final int TOLD = 20;
    private static final Set<Role> SUMS = EnumSet.of(Role.NET, Role.AMOUNT, Role.TOTAL);
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
    private List<Column> money = List.of();
    private List<Equation> equations = List.of();

    MoneyPlanner(List<Column> columns, List<Grid.Line> rows, Findings findings) {
        this.columns = columns;
        this.rows = rows;
        this.findings = findings;
    }

    /** Nothing where no way was found; what is open or in the way is then told. */
    Optional<MoneyPlan> plan() {
        UnitPrices prices = new UnitPrices(columns, rows.size(), findings);
        prices.tell();
        money =
                BalanceStudy.without(
                        columns.stream()
                                .filter(c -> c.hasValues() && !OUTSIDE.contains(c.role()))
                                .toList());
        equations = Equation.find(withPayouts(money), rows.size());
        Optional<MoneyPlan> plan =
                pair().or(this::byEquation)
                        .or(this::withoutTax)
                        .or(() -> byProduct(prices))
                        .or(() -> single(money));
        if (plan.isEmpty() && findings.canBeWritten()) {
            RowSum sum = new RowSum(money, findings);
            plan = sum.plan();
            money = money.stream().filter(c -> !sum.leavesOut(c)).toList();
        }
        if (plan.isEmpty() && findings.canBeWritten()) {
            plan = bySumColumn();
        }
        if (plan.isEmpty()) {
            refuse();
            return plan;
        }
        MoneyPlan found = plan.get();
        new LeftOver(equations, findings).tell(money, found);
        found.equation().ifPresent(e -> tell(found, e));
        return plan;
    }

    private void refuse() {
        if (money.isEmpty()) {
            findings.unsound("found no column of amounts; expected one, such as Amount");
        } else if (findings.canBeWritten()) {
            String unknown =
                    money.stream()
                            .filter(c -> c.role() == Role.NONE)
                            .findFirst()
                            .orElse(money.get(0))
                            .reference();
            findings.unsound(
                    "found %s, which keep no identity from row to row, such as gross - fee = net; nothing shows which of them are the money: say what each of them is, such as --answer \"column/%s=fee\" or \"column/%s=ignored\""
                            .formatted(names(money), unknown, unknown));
        }
    }

    /** A payout on each row may be what the row comes to. */
    private List<Column> withPayouts(List<Column> money) {
        List<Column> all = new ArrayList<>(money);
        columns.stream().filter(c -> c.role() == Role.PAYOUT && c.hasValues()).forEach(all::add);
        return all;
    }

    /** With units times a price in place of the price. */
    private Optional<MoneyPlan> byProduct(UnitPrices prices) {
        Optional<Column> product = prices.product();
        if (product.isEmpty()) {
            return Optional.empty();
        }
        Column price = product.get().factors().get(1);
        List<Column> before = money;
        List<Equation> found = equations;
        money = new ArrayList<>(before);
        money.remove(price);
        money.add(product.get());
        equations = Equation.find(withPayouts(money), rows.size());
        Optional<MoneyPlan> plan = byEquation().filter(p -> !p.parts().isEmpty());
        if (plan.filter(p -> p.uses(product.get())).isPresent()) {
            return plan;
        }
        boolean stated = money.stream().anyMatch(c -> SUMS.contains(c.role()) && !c.isZero());
        if (stated || !prices.isOfOneUnit(price)) {
            money = before;
            equations = found;
            return Optional.empty();
        }
        return money.stream().allMatch(c -> c == product.get() || c.isZero())
                ? Optional.of(MoneyPlan.product(product.get()))
                : Optional.empty();
    }

    /** Columns that add up though no name says which of them is the sum. */
    private Optional<MoneyPlan> bySumColumn() {
        Optional<Equation> whole =
                equations.stream()
                        .filter(e -> e.columns().size() >= 3 && e.broken().isEmpty())
                        .filter(e -> rows.size() >= 3)
                        .filter(e -> e.columns().stream().anyMatch(c -> c.role() == Role.NONE))
                        .filter(
                                e ->
                                        e.columns().stream()
                                                .allMatch(
                                                        c ->
                                                                c.role() == Role.NONE
                                                                        || c.role().isPart()))
                        .findFirst();
        if (whole.isEmpty()) {
            return Optional.empty();
        }
        List<Column> of = whole.get().columns();
        return findings.ask(
                        new Question(
                                "sum-column",
                                "%s on every row; which of them is what the row comes to?"
                                        .formatted(said(whole.get(), of.get(of.size() - 1))),
                                of.stream().map(Column::reference).toList(),
                                true))
                .flatMap(a -> of.stream().filter(c -> c.reference().equals(a)).findFirst())
                .map(
                        root -> {
                            root.setRole(Role.NET);
                            return plan(root, whole.get());
                        });
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
        return new IdentityChoice(columns, money, equations)
                .best()
                .map(choice -> plan(choice.root(), choice.equation()));
    }

    /** Net, VAT of nought on every row, and gross: the net is the gross, but the VAT is stated. */
    private Optional<MoneyPlan> withoutTax() {
        Optional<Column> net = first(Role.NET).or(() -> first(Role.AMOUNT));
        Optional<Column> gross = first(Role.TOTAL);
        Optional<Column> tax =
                first(Role.TAX).filter(t -> t.isZero() && t.stated().size() == rows.size());
        boolean same =
                net.isPresent()
                        && gross.isPresent()
                        && Arrays.equals(net.get().values(), gross.get().values());
        boolean alone = money.stream().filter(c -> !c.isZero()).count() == 2;
        return same && alone && !net.get().isZero()
                ? tax.map(
                        t ->
                                new MoneyPlan(
                                        MoneyPlan.Shape.DOCUMENT,
                                        List.of(
                                                new MoneyPlan.Part(net.get(), 1),
                                                new MoneyPlan.Part(t, 1)),
                                        gross,
                                        Optional.empty()))
                : Optional.empty();
    }

    private MoneyPlan plan(Column root, Equation equation) {
        List<MoneyPlan.Part> parts = new ArrayList<>();
        for (Column column : equation.columns()) {
            if (column != root) {
                parts.add(new MoneyPlan.Part(column, -equation.sign(column) * equation.sign(root)));
            }
        }
        boolean document = IdentityChoice.isNetOfGross(root, parts);
        if (document) {
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
        if (IdentityChoice.isPrinted(root, parts)) {
            parts.sort(Comparator.comparing(p -> p.column().role() == Role.TAX));
            return new MoneyPlan(
                    MoneyPlan.Shape.DOCUMENT, parts, Optional.of(root), Optional.of(equation));
        }
        boolean said = columns.stream().anyMatch(c -> c.role() == Role.TYPE);
        for (MoneyPlan.Part part : parts) {
            if (!said) {
                askPart(part.column(), root, findings);
            }
        }
        IdentityChoice.price(parts)
                .ifPresent(
                        price ->
                                parts.stream()
                                        .filter(p -> p.column().isMaybeDelivery())
                                        .filter(p -> IdentityChoice.way(p, price) > 0)
                                        .forEach(p -> p.column().setRole(Role.DELIVERY)));
        TaxesBeside taxes = new TaxesBeside(parts, findings);
        taxes.askTaken();
        return new MoneyPlan(
                MoneyPlan.Shape.WIDE,
                parts,
                Optional.of(root),
                Optional.of(equation),
                taxes.ofPrices());
    }

    private static Column byRole(List<MoneyPlan.Part> parts, Role role) {
        return parts.stream()
                .map(MoneyPlan.Part::column)
                .filter(c -> c.role() == role)
                .findFirst()
                .orElseThrow();
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
}
