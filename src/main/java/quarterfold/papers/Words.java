package quarterfold.papers;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import quarterfold.law.Box;
import quarterfold.money.Amount;
import quarterfold.money.Rounding;
import quarterfold.period.BoxFigure;
import quarterfold.period.Period;
import quarterfold.period.VatReturn;

/**
 * The papers' own phrases: dates, figures and codes as a person reads them, in every paper alike.
 */
final class Words {

    private static final DateTimeFormatter DAY =
            DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);
    private static final DateTimeFormatter DAY_AND_MONTH =
            DateTimeFormatter.ofPattern("d MMMM", Locale.ENGLISH);
    private static final Set<String> INITIALS = Set.of("uk", "vat", "eu", "ni", "gb", "co2");

    private static final String REDUCED = "-reduced";

    private Words() {}

    /** Such as {@code 7 November 2026}. */
    static String day(LocalDate day) {
        return DAY.format(day);
    }

    /** Such as {@code 1 July to 30 September 2026}. */
    static String span(Period period) {
        boolean oneYear = period.start().getYear() == period.end().getYear();
        return (oneYear ? DAY_AND_MONTH : DAY).format(period.start()) + " to " + day(period.end());
    }

    /** Such as {@code 1,670.00}, or {@code 1,670.0025} where there is more than a penny. */
    static String money(Amount amount) {
        return digits("#,##0.00##", amount);
    }

    /** A box's figure with thousands apart: {@code 4,960.00}, or {@code 24,800} in whole pounds. */
    static String figure(Box box, Amount figure) {
        return digits(box.unit() == Box.Unit.POUNDS ? "#,##0" : "#,##0.00", figure);
    }

    /** Such as {@code 2,000}. */
    static String count(long count) {
        return digits("#,##0", BigDecimal.valueOf(count));
    }

    private static String digits(String pattern, Amount amount) {
        return digits(pattern, amount.decimal());
    }

    private static String digits(String pattern, BigDecimal value) {
        DecimalFormat format =
                new DecimalFormat(pattern, DecimalFormatSymbols.getInstance(Locale.ROOT));
        format.setRoundingMode(RoundingMode.UNNECESSARY);
        return format.format(value);
    }

    /** A code as words: {@code uk-sale} as {@code UK sale}. */
    static String plain(String code) {
        String words =
                Arrays.stream(code.split("-", -1))
                        .map(w -> INITIALS.contains(w) ? w.toUpperCase(Locale.ROOT) : w)
                        .collect(Collectors.joining(" "));
        return capital(words);
    }

    /** The text with a capital first. */
    static String capital(String text) {
        return text.isEmpty() ? text : Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }

    /** A column of a law table as a heading: {@code must_show} as {@code Must show}. */
    static String heading(String column) {
        return plain(column.replace('_', '-'));
    }

    /** Such as {@code a, b and c}. */
    static String all(List<String> parts) {
        int last = parts.size() - 1;
        return last < 1
                ? String.join("", parts)
                : String.join(", ", parts.subList(0, last)) + " and " + parts.get(last);
    }

    /** How a box of the form is rounded. */
    static String rounding(Rounding rounding) {
        return switch (rounding) {
            case NEAREST_PENNY -> "To the nearest penny";
            case PENNY_DOWN -> "Down to a whole penny";
            case NEAREST_TENTH_OF_A_PENNY -> "To the nearest tenth of a penny";
            case NEAREST_HALF_PENNY -> "To the nearest half penny";
            case POUNDS_DOWN -> "Pence dropped";
        };
    }

    /** Where a box of the form comes from. */
    static String made(Box box) {
        String boxes = String.join(" and ", box.formula().boxes());
        return switch (box.formula().operation()) {
            case ENTRIES -> "what the entries add to it";
            case SUM -> "the sum of boxes " + boxes;
            case GAP -> "the larger of boxes " + boxes + " less the smaller";
        };
    }

    /**
     * A treatment as words. The tables end the name of what takes a sale back in {@code -reduced};
     * alone, that word would be read as the reduced rate.
     */
    static String treatment(String code) {
        return code.endsWith(REDUCED)
                ? plain(code.substring(0, code.length() - REDUCED.length()))
                        + ": refund or discount"
                : plain(code);
    }

    /** The box that is the difference of two, which says how much is to be paid or repaid. */
    static BoxFigure difference(VatReturn vatReturn) {
        return vatReturn.boxes().stream()
                .filter(b -> b.box().formula().operation() == Box.Operation.GAP)
                .findFirst()
                .orElseThrow(
                        () ->
                                new IllegalArgumentException(
                                        "form.csv: no box has the formula gap; one box is the"
                                                + " difference of two, such as gap 3 4"));
    }

    /** Such as {@code Pay 1,670.00 by 7 November 2026}. */
    static String direction(VatReturn vatReturn) {
        BoxFigure difference = difference(vatReturn);
        String figure = figure(difference.box(), difference.figure());
        Period period = vatReturn.period();
        return switch (vatReturn.direction()) {
            case PAY -> "Pay " + figure + payEnd(period);
            case RECLAIM -> "Reclaim " + figure + dueEnd(period);
            case NIL -> "Nothing to pay or reclaim" + dueEnd(period);
        };
    }

    static String payEnd(Period period) {
        return " by " + day(period.due());
    }

    static String dueEnd(Period period) {
        return "; the return is due by " + day(period.due());
    }

    /** Such as {@code VAT return, closed}. */
    static String title(VatReturn vatReturn) {
        return "VAT return, " + vatReturn.status().code();
    }

    /** How the book rounds the VAT in its sales. */
    static String rounding(boolean perLine) {
        return perLine
                ? "each sale's VAT to the nearest penny"
                : "four decimals in each sale, one rounding in each box";
    }

    /** With two decimals where pennies are all there is, otherwise with four. */
    static String exact(Amount amount, boolean pence) {
        return digits(pence ? "#,##0.00" : "#,##0.0000", amount);
    }

    /** How many of what: {@code 1 entry}, {@code 2,000 entries}. */
    static String of(long count, String one, String many) {
        return count(count) + " " + (count == 1 ? one : many);
    }
}
