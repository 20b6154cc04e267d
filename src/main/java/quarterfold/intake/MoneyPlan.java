package quarterfold.intake;

import java.util.List;
import java.util.Optional;

/**
 * Which number columns make the money of a row.
 *
 * @param shape how they do
 * @param parts the columns that are entered, each with what makes its value the owner's: 1, or -1
 *     where it is printed positive and goes out
 * @param root the column the parts sum to, where there is one
 * @param equation what the parts and the root keep
 */
record MoneyPlan(
        Shape shape, List<Part> parts, Optional<Column> root, Optional<Equation> equation) {
    enum Shape {
        /** One amount a row, whose words say what it is. */
        SINGLE,
        /** Money out and money in, each in its column. */
        PAIR,
        /** Units times a price. */
        PRODUCT,
        /** Several amounts a row, whose columns say what they are. */
        WIDE,
        /** Net, VAT and gross of a document. */
        DOCUMENT
    }

    /** A column and the sign that makes it the owner's. */
    record Part(Column column, int sign) {}

    /** The owner's money of a row. */
    long money(int row) {
        if (shape == Shape.PRODUCT) {
            return Math.multiplyExact(
                            parts.get(0).column().values()[row],
                            parts.get(1).column().values()[row])
                    / 10_000;
        }
        if (shape == Shape.DOCUMENT) {
            return root.map(r -> r.values()[row]).orElse(0L);
        }
        long money = 0;
        for (Part part : parts) {
            money += part.sign() * part.column().values()[row];
        }
        return money;
    }

    Optional<Part> part(Role role) {
        return parts.stream().filter(p -> p.column().role() == role).findFirst();
    }

    boolean has(Role role) {
        return part(role).isPresent();
    }

    /** The VAT a bill prints within its total, on every row of the total's own sign. */
    Optional<Column> printedVat(List<Column> columns) {
        long[] totals = parts.get(0).column().values();
        return columns.stream()
                .filter(c -> c.role() == Role.TAX && c.hasValues() && !c.isZero())
                .filter(
                        c -> {
                            for (int row = 0; row < totals.length; row++) {
                                if (Long.signum(c.values()[row]) * Long.signum(totals[row]) < 0) {
                                    return false;
                                }
                            }
                            return true;
                        })
                .findFirst();
    }
}
