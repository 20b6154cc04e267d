package quarterfold.ledger;

import java.util.Optional;
import quarterfold.money.Percent;

/**
 * The rate as the document states it: a percentage such as {@code 20} or {@code 17.5}, or {@code
 * exempt}, {@code outside}, or nothing.
 *
 * @param code the percentage in plain digits, {@code exempt}, {@code outside} or the empty text
 */
public record StatedRate(String code) {

    public static final StatedRate NONE = new StatedRate("");
    public static final StatedRate EXEMPT = new StatedRate("exempt");
    public static final StatedRate OUTSIDE = new StatedRate("outside");

    /** A percentage, as {@code 20}, {@code 20.0} or {@code 20%}; or a word; or nothing. */
    public static Optional<StatedRate> parse(String text) {
        String plain = text.endsWith("%") ? text.substring(0, text.length() - 1).strip() : text;
        if (plain.isEmpty() || plain.equals(EXEMPT.code) || plain.equals(OUTSIDE.code)) {
            return Optional.of(new StatedRate(plain));
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
        return !isStated() || equals(EXEMPT) || equals(OUTSIDE)
                ? Optional.empty()
                : Optional.of(Percent.of(code));
    }
}
