package quarterfold.intake;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** The prices of a table that are for one unit, beside a column of how many there are. */
final class UnitPrices {
    private final List<Column> columns;
    private final int rows;
    private final Findings findings;

    UnitPrices(List<Column> columns, int rows, Findings findings) {
        this.columns = columns;
        this.rows = rows;
        this.findings = findings;
    }

    /** A price of which another column has the product is for one unit, and no money of its own. */
    void tell() {
        Optional<Column> product = product().filter(p -> !isPrice(p));
        product.flatMap(this::stated)
                .ifPresent(
                        stated -> {
                            Column price = product.get().factors().get(1);
                            price.setRole(Role.UNIT_PRICE);
                            String said =
                                    "%s = %s in %,d of %,d rows"
                                            .formatted(
                                                    product.get().reference(),
                                                    stated.reference(),
                                                    rows,
                                                    rows);
                            if (rows >= 3) {
                                findings.prove(said);
                            } else {
                                findings.note(said);
                            }
                        });
    }

    /** Units times price; nothing where there are no such columns, or all of it is stated. */
    Optional<Column> product() {
        Optional<Column> quantity = first(Role.QUANTITY);
        Optional<Column> price = first(Role.UNIT_PRICE).or(() -> first(Role.GOODS));
        return quantity.flatMap(q -> price.flatMap(p -> Column.product(q, p)));
    }

    /** Whether it is the price of one; asked where its name does not say so. */
    boolean isOfOneUnit(Column price) {
        if (price.role() == Role.UNIT_PRICE) {
            return true;
        }
        return findings.ask(
                        new Question(
                                "price",
                                "no column says what a row comes to; is '%s' the price of one unit or of all that '%s' counts?"
                                        .formatted(
                                                price.reference(),
                                                first(Role.QUANTITY).orElseThrow().reference()),
                                List.of("one", "all"),
                                true))
                .filter("one"::equals)
                .isPresent();
    }

    private Optional<Column> stated(Column product) {
        return columns.stream()
                .filter(c -> c.hasValues() && !product.factors().contains(c))
                .filter(c -> Arrays.equals(c.values(), product.values()))
                .findFirst();
    }

    private static boolean isPrice(Column product) {
        return product.isZero()
                || Arrays.equals(product.values(), product.factors().get(1).values());
    }

    private Optional<Column> first(Role role) {
        return columns.stream()
                .filter(c -> c.role() == role && c.hasValues() && !c.isZero())
                .findFirst();
    }
}
