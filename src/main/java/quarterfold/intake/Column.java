package quarterfold.intake;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A column of a table being learned: its name, what it seems to be for, and its cells. */
final class Column {
    /** So many columns may be added up, whatever their signs, without an overflow. */
    private static final int SUMS = 64;

    private final int index;
    private final String reference;
    private final String name;
    private final List<String> texts;
    private Role role = Role.NONE;
    private Optional<Role> meant = Optional.empty();
    private long[] values = new long[0];

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
