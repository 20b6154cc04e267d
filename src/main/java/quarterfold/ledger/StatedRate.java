package quarterfold.ledger;

import java.util.List;
import java.util.Optional;
import quarterfold.money.Percent;

/**
 * The rate as the document states it: a percentage such as {@code 20} or {@code 17.5}, or {@code
 * exempt}, {@code outside}, {@code margin}, {@code reverse-charge}, or nothing.
 *
 * @param code the percentage in plain digits, one of the words, or the empty text
 */
public record StatedRate(String code) {

    public static final StatedRate NONE = new StatedRate("");
    public static final StatedRate EXEMPT = new StatedRate("exempt");
    public static final StatedRate OUTSIDE = new StatedRate("outside");

    /** Second-hand goods and the like, taxed on the seller's margin. */
    public static final StatedRate MARGIN = new StatedRate("margin");

    /** A supply here whose VAT the customer accounts for. */
    public static final StatedRate REVERSE_CHARGE = new StatedRate("reverse-charge");

    private static final List<StatedRate> WORDS =
            List.of(NONE, EXEMPT, OUTSIDE, MARGIN, REVERSE_CHARGE);

    /** A percentage, as {@code 20}, {@code 20.0} or {@code 20%}; or a word; or nothing. */
    public static Optional<StatedRate> parse(String text) {
        String plain = text.endsWith("%") ? text.substring(0, text.length() - 1).strip() : text;
        StatedRate word = new StatedRate(plain);
        if (WORDS.contains(word)) {
            return Optional.of(word);
        }
        try {
            return Optional.of(new StatedRate(Percent.of(plain).toString()));
        } catch (IllegalArgumentException notAPercentage) {
            return Optional.empty();
        }
    }

    public boolean isStated() {
        return !code.isEmpty();
    }

    public Optional<Percent> percent() {
        return WORDS.contains(this) ? Optional.empty() : Optional.of(Percent.of(code));
    }
}
