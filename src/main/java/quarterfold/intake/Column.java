package quarterfold.intake;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A column of a table being learned: its name, what it seems to be for, and its cells. */
final class Column {
    /** So many columns may be added up, whatever their signs, without an overflow. */
    private static final int SUMS = 64;

    private static final long UNIT = 10_000;

    private final int index;
    private final String reference;
    private final String name;
    private final List<String> texts;
    private Role role = Role.NONE;
    private boolean maybeDelivery;
    private Optional<Role> meant = Optional.empty();
    private long[] values = new long[0];
    private List<Column> factors = List.of();

    /** The product of two columns on each row; none where it is not exact. */
    static Optional<Column> product(Column one, Column other) {
        String name = one.reference() + " x " + other.reference();
        long[] values = new long[one.values().length];
        try {
            for (int row = 0; row < values.length; row++) {
                long product = Math.multiplyExact(one.values()[row], other.values()[row]);
                if (product % UNIT != 0) {
                    return Optional.empty();
                }
                values[row] = product / UNIT;
            }
        } catch (ArithmeticException tooLarge) {
            return Optional.empty();
        }
        Column column = new Column(-1, name, "", List.of());
        column.setRole(Role.GOODS);
        column.setValues(values);
        column.factors = List.of(one, other);
        return Optional.of(column);
    }

    /**
     * @param reference how a layout names it: its name, or {@code #3} or {@code Amount#2}
     * @param texts its cell in each row
     */
    Column(int index, String reference, String name, List<String> texts) {
        this.index = index;
        this.reference = reference;
        this.name = name;
        this.texts = texts;
    }

    int index() {
        return index;
    }

    String reference() {
        return reference;
    }

    String name() {
        return name;
    }

    List<String> texts() {
        return texts;
    }

    /** The texts that are not blank. */
    List<String> stated() {
        return texts.stream().filter(t -> !t.isEmpty() && !NumberText.isNothing(t)).toList();
    }

    Role role() {
        return role;
    }

    void setRole(Role role) {
        this.role = role;
        maybeDelivery = false;
    }

    /** A fee by its name, which may be what the buyer pays for delivery too: {@code Postage}. */
    boolean isMaybeDelivery() {
        return maybeDelivery;
    }

    void setMaybeDelivery() {
        role = Role.FEE;
        maybeDelivery = true;
    }

    /** A role the name means and the cells are not fit for. */
    Optional<Role> meant() {
        return meant;
    }

    void setMeant(Role role) {
        meant = Optional.of(role);
    }

    /** Gives it the role a person says it has, whatever its name means. */
    void settle(String answer) {
        role = Role.of(answer);
        meant = Optional.empty();
    }

    /** In ten-thousandths, one for each row, 0 where blank; none where it is no number. */
    long[] values() {
        return values;
    }

    /** Numbers too large to be added up are codes, and no money: the column then has no values. */
    void setValues(long[] values) {
        long room = Long.MAX_VALUE / SUMS;
        for (long value : values) {
            room -= Math.abs(value);
            if (room < 0) {
                this.values = new long[0];
                return;
            }
        }
        this.values = values;
    }

    /** The two columns it is the product of; none of a column of the file. */
    List<Column> factors() {
        return factors;
    }

    boolean hasValues() {
        return values.length > 0;
    }

    boolean isZero() {
        for (long value : values) {
            if (value != 0) {
                return false;
            }
        }
        return true;
    }

    long sum() {
        long sum = 0;
        for (long value : values) {
            sum = Math.addExact(sum, value);
        }
        return sum;
    }

    /** Each distinct text with how often it stands there, in order of the rows. */
    Map<String, Integer> distinct() {
        Map<String, Integer> distinct = new LinkedHashMap<>();
        texts.forEach(t -> distinct.merge(t, 1, Integer::sum));
        return distinct;
    }
}
