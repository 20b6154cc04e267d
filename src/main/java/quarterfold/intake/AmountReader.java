package quarterfold.intake;

import quarterfold.money.Amount;

/**
 * Reads amounts as one layout writes them, into ten-thousandths. A loop over the characters: this
 * runs for every amount of a million lines. For one thread.
 */
final class AmountReader {
    /** What {@link #read} gives for a text that is not an amount. */
    static final long BAD = Long.MIN_VALUE;

    /** 13 digits before the decimal mark, the widest box of the return. */
    private static final long LIMIT = 10_000_000_000_000L * 10_000;

    private static final long[] SCALE = {10_000, 1_000, 100, 10, 1};
    private static final int DECIMALS = 4;

    private final Layout.Numbers numbers;
    private final char decimal;
    private final boolean needsLetters;
    private boolean converted;

    AmountReader(Layout.Numbers numbers) {
        this(numbers, false);
    }

    private AmountReader(Layout.Numbers numbers, boolean needsLetters) {
        this.numbers = numbers;
        this.decimal = numbers.decimal();
        this.needsLetters = needsLetters;
    }

    /** One of money alone: where letters say which way it goes, none goes without. */
    static AmountReader ofMoney(Layout.Numbers numbers) {
        return new AmountReader(numbers, numbers.letters());
    }

    /** The same for columns that say which way money goes, so that no letters do. */
    static Layout.Numbers withoutLetters(Layout.Numbers numbers) {
        return new Layout.Numbers(
                numbers.decimal(),
                numbers.thousands(),
                numbers.trailingMinus(),
                numbers.brackets(),
                numbers.plus(),
                false,
                numbers.minor(),
                numbers.units());
    }

    /** Whether the last text read was anything but digits, a minus before and a decimal point. */
    boolean converted() {
        return converted;
    }

    /** The amount, or {@link #BAD}. */
    long read(String text) {
        converted = false;
        long value = read(text, decimal);
        return needsLetters && value != 0 && !hasLetters(text) ? BAD : value;
    }

    /**
     * The amount of a cell that the file itself stores as a number. Of money with letters only one
     * below nought says which way it goes.
     */
    long readNumber(String text) {
        converted = false;
        long value = read(text, '.');
        return needsLetters && value > 0 ? BAD : value; // a debit may show its letters alone
    }

    private long read(String text, char mark) {
        int length = text.length();
        int i = length > 0 && text.charAt(0) == '-' ? 1 : 0;
        boolean negative = i == 1;
        long value = 0;
        int digits = 0;
        int markAt = -1;
        for (; i < length; i++) {
            char c = text.charAt(i);
            if (c >= '0' && c <= '9') {
                value = value * 10 + (c - '0');
                digits++;
            } else if (c == mark && markAt < 0) {
                markAt = i;
            } else {
                return readDressed(text, mark);
            }
        }
        int decimals = markAt < 0 ? 0 : length - 1 - markAt;
        if (digits == 0 || markAt == length - 1) {
            return BAD;
        }
        if (numbers.minor() > 0 && (decimals > 0 || digits > 17)) {
            return BAD;
        }
        if (decimals > DECIMALS || digits > 17) {
            return readLong(text, mark);
        }
        converted |= (markAt >= 0 && mark != '.') || numbers.minor() > 0;
        value *= SCALE[decimals + numbers.minor()];
        return value >= LIMIT || value < 0 ? BAD : negative ? -value : value;
    }

    /** More digits than fit the quick way: zeros before or behind are harmless. */
    private long readLong(String text, char mark) {
        String plain = mark == '.' ? text : text.replace(mark, '.');
        if (plain.length() > 60) {
            return BAD;
        }
        try {
            long value = Amount.of(plain).tenThousandths();
            converted |= mark != '.';
            return Math.abs(value) >= LIMIT ? BAD : value;
        } catch (ArithmeticException tooPrecise) {
            return BAD;
        }
    }

    /** An amount with thousands marks, or with its sign behind it or around it. */
    private long readDressed(String text, char mark) {
        String digits = withoutUnit(text);
        boolean negative = false;
        if (numbers.letters() && hasLetters(digits)) {
            negative = Character.toLowerCase(digits.charAt(digits.length() - 2)) == 'd';
            digits = trimmed(digits.substring(0, digits.length() - 2));
        } else if (digits.startsWith("-") || digits.startsWith("\u2212")) {
            negative = true;
            digits = digits.substring(1);
        } else if (numbers.trailingMinus() && digits.endsWith("-")) {
            negative = true;
            digits = digits.substring(0, digits.length() - 1).strip();
        } else if (numbers.brackets() && digits.startsWith("(") && digits.endsWith(")")) {
            negative = true;
            digits = digits.substring(1, digits.length() - 1).strip();
        } else if (numbers.plus() && digits.startsWith("+")) {
            digits = digits.substring(1);
        }
        digits = withoutUnit(digits);
        String plain = withoutThousands(digits, mark);
        for (int i = 0; i < plain.length(); i++) {
            char c = plain.charAt(i);
            if ((c < '0' || c > '9') && c != mark) {
                return BAD;
            }
        }
        if (plain.indexOf(mark) != plain.lastIndexOf(mark)) {
            return BAD;
        }
        long value = read(plain, mark);
        converted = true;
        return value == BAD ? BAD : negative ? -value : value;
    }

    /** Whether CR or DR stands behind: an account's credit comes in, its debit goes out. */
    static boolean hasLetters(String text) {
        int at = text.length() - 2;
        return at > 0
                && (text.regionMatches(true, at, "CR", 0, 2)
                        || text.regionMatches(true, at, "DR", 0, 2));
    }

    /** The text without one unit before it or behind it, and the spaces between. */
    private String withoutUnit(String text) {
        for (String unit : numbers.units()) {
            if (text.startsWith(unit)) {
                return trimmed(text.substring(unit.length()));
            }
            if (text.endsWith(unit)) {
                return trimmed(text.substring(0, text.length() - unit.length()));
            }
        }
        return text;
    }

    /** Without spaces at its ends, those that do not break included. */
    private static String trimmed(String text) {
        int start = 0;
        int end = text.length();
        while (start < end && Character.isSpaceChar(text.charAt(start))) {
            start++;
        }
        while (start < end && Character.isSpaceChar(text.charAt(end - 1))) {
            end--;
        }
        return text.substring(start, end);
    }

    /** The digits alone where thousands marks stand in their places, else the text as it is. */
    private String withoutThousands(String text, char mark) {
        if (numbers.thousands() == 0 || mark != decimal) {
            return text;
        }
        int end = text.indexOf(mark) < 0 ? text.length() : text.indexOf(mark);
        StringBuilder plain = new StringBuilder();
        int sinceMark = -1;
        for (int i = 0; i < end; i++) {
            char c = text.charAt(i);
            if (numbers.isThousands(c)) {
                boolean inPlace = sinceMark < 0 ? i >= 1 && i <= 3 : sinceMark == 3;
                if (!inPlace) {
                    return text;
                }
                sinceMark = 0;
            } else {
                plain.append(c);
                sinceMark += sinceMark < 0 ? 0 : 1;
            }
        }
        return sinceMark >= 0 && sinceMark != 3
                ? text
                : plain.append(text, end, text.length()).toString();
    }
}
