package quarterfold.intake;

import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * Whether a cell that nothing is read from may be money: an amount other than nought that shows
 * decimals, or any number below a name that means money. For one thread.
 */
final class UnreadMoney {
    private static final Set<Role> MONEY =
            EnumSet.of(
                    Role.GOODS,
                    Role.DELIVERY,
                    Role.DISCOUNT,
                    Role.TAX,
                    Role.WITHHELD,
                    Role.FEE,
                    Role.ADVERT,
                    Role.NET,
                    Role.TOTAL,
                    Role.AMOUNT,
                    Role.DEBIT,
                    Role.CREDIT);

    private final AmountReader amounts;
    private final Map<String, Boolean> names = new HashMap<>();
    private Optional<Vocabulary> words = Optional.empty();

    UnreadMoney(Layout.Numbers numbers) {
        amounts = new AmountReader(numbers);
    }

    /** {@code stored}: whether the file itself stores a number there. */
    boolean isAmount(String name, String text, boolean stored) {
        if (text.chars().noneMatch(c -> c >= '1' && c <= '9')) {
            return false;
        }
        long value = stored ? amounts.readNumber(text) : amounts.read(text);
        if (value == AmountReader.BAD || value == 0) {
            return false;
        }
        return value % 10_000 != 0
                || LineAmounts.showsDecimals(text)
                || names.computeIfAbsent(name, this::isMoneyName);
    }

    private boolean isMoneyName(String name) {
        Vocabulary known = words.orElseGet(Vocabulary::load);
        words = Optional.of(known);
        return known.wholeRole(name).filter(MONEY::contains).isPresent();
    }

    /** The columns of a table that nothing is read from and that have amounts. */
    static Set<String> unread(
            List<Column> columns, List<Grid.Line> rows, Set<String> read, Layout.Numbers numbers) {
        UnreadMoney money = new UnreadMoney(numbers);
        Set<String> unread = new TreeSet<>();
        for (Column column : columns) {
            for (int row = 0; row < rows.size() && !read.contains(column.reference()); row++) {
                boolean stored = rows.get(row).numbers().get(column.index());
                if (money.isAmount(column.name(), column.texts().get(row), stored)) {
                    unread.add(column.reference());
                }
            }
        }
        return unread;
    }
}
