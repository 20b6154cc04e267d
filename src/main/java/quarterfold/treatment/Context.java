package quarterfold.treatment;

import java.time.LocalDate;
import java.util.Optional;
import quarterfold.law.Law;
import quarterfold.ledger.Settings;
import quarterfold.money.Rounding;

/**
 * What treating an entry needs beside the entry: the law, the book's settings, the liability of its
 * products, the goods of its orders, what people decided, and the names of its files.
 *
 * @param perLine whether VAT inside a price is rounded to the penny in each entry
 */
public record Context(
        Law law,
        Settings settings,
        Products products,
        Baskets baskets,
        Answers answers,
        Files files,
        boolean perLine) {

    /** The liability of a product on a day, such as {@code zero}; empty where it is not listed. */
    public interface Products {
        Optional<String> liability(String product, LocalDate day);
    }

    /** The name of a source's file. */
    public interface Files {
        String name(long source);
    }

    /** The same under another law and other settings, such as those of a close. */
    public Context under(Law otherLaw, Settings otherSettings) {
        return new Context(
                otherLaw,
                otherSettings,
                products,
                baskets,
                answers,
                files,
                otherSettings.roundingPerLine());
    }

    /** The same under the rounding the book did not choose. */
    public Context withOtherRounding() {
        return new Context(law, settings, products, baskets, answers, files, !perLine);
    }

    Optional<Rounding> lineRounding() {
        return perLine ? Optional.of(Rounding.NEAREST_PENNY) : Optional.empty();
    }
}
