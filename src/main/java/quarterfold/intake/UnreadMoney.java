package quarterfold.intake;

import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;

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

    /** What changes how a row is taxed, or whether it counts. */
    private static final Set<Role> TELLING =
            EnumSet.of(Role.CURRENCY, Role.STATUS, Role.RATE, Role.FROM, Role.TO);

    private static final Pattern DECIMALS = Pattern.compile("[.,]\\d{1,4}$");

    private final AmountReader amounts;
    private final Map<String, Boolean> names = new HashMap<>();
    private final Map<String, Boolean> telling = new HashMap<>();
    private Optional<Vocabulary> words = Optional.empty();
    private Optional<NumberText> dressed = Optional.empty();

    UnreadMoney(Layout.Numbers numbers) {
        amounts = new AmountReader(numbers);
    }

    /** {@code stored}: whether the file itself stores a number there. */
    boolean isAmount(String name, String text, boolean stored) {
        if (text.chars().noneMatch(c -> c >= '1' && c <= '9')) {
            return false;
        }
        if (names.computeIfAbsent(name, this::isMoneyName)) {
            return true; // in whatever dress
        }
        long value = value(text, stored);
        return (value != 0 && (value % 10_000 != 0 || LineAmounts.showsDecimals(text)))
                || otherDress(text, stored).filter(d -> DECIMALS.matcher(d).find()).isPresent();
    }

    /** Whether the cell is a number other than nought. */
    boolean isNumber(String text, boolean stored) {
        return value(text, stored) != 0 || otherDress(text, stored).isPresent();
    }

    /** The digits of money the layout does not read: with CR or DR, or in another currency. */
    private Optional<String> otherDress(String text, boolean stored) {
        if (stored
                || text.chars().noneMatch(c -> c >= '1' && c <= '9')
                || amounts.read(text) != AmountReader.BAD) {
            return Optional.empty();
        }
        NumberText known = dressed.orElseGet(() -> new NumberText(words().currencies()));
        dressed = Optional.of(known);
        return known.of(text)
                .filter(d -> d.letters() || !d.unit().isEmpty())
                .map(NumberText.Dress::digits);
    }

    /** 0 for what is no number. */
    private long value(String text, boolean stored) {
        long value = stored ? amounts.readNumber(text) : amounts.read(text);
        return value == AmountReader.BAD ? 0 : value;
    }

    private boolean isMoneyName(String name) {
        return isOf(name, MONEY);
    }

    /** Whether the name says that a text below it is of account. */
    boolean isTelling(String name) {
        return telling.computeIfAbsent(name, n -> isOf(n, TELLING));
    }

    private boolean isOf(String name, Set<Role> roles) {
        return words().wholeRole(name).filter(roles::contains).isPresent();
    }

    /** Only read where a layout does not know all columns. */
    private Vocabulary words() {
        Vocabulary known = words.orElseGet(Vocabulary::load);
        words = Optional.of(known);
        return known;
    }

    /** The columns that nothing is read from, and that have amounts or texts of account. */
    static Set<String> unread(
            List<Column> columns, List<Grid.Line> rows, Set<String> read, Layout.Numbers numbers) {
        UnreadMoney money = new UnreadMoney(numbers);
        Set<String> unread = new TreeSet<>();
        for (Column column : columns) {
            for (int row = 0; row < rows.size() && !read.contains(column.reference()); row++) {
                boolean stored = rows.get(row).numbers().get(column.index());
                String text = column.texts().get(row);
                if (money.isAmount(column.name(), text, stored)
                        || (!text.isEmpty() && money.isTelling(column.name()))) {
                    unread.add(column.reference());
                }
            }
        }
        return unread;
    }
}
