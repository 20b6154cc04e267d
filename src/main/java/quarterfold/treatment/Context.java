package quarterfold.treatment;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import quarterfold.law.Law;
import quarterfold.ledger.Bundles;
import quarterfold.ledger.Settings;
import quarterfold.money.Rounding;

/**
 * What treating an entry needs beside the entry: the law, the book's settings, the liability of its
 * products, the goods of its orders, what several entries come to together, what people decided,
 * what entries say of one another, and the names of its files.
 *
 * @param perLine whether VAT inside a price is rounded to the penny in each entry
 * @param related what other entries and the calendar say of one
 */
public record Context(
        Law law,
        Settings settings,
        Products products,
        Baskets baskets,
        Together together,
        Answers answers,
        Ties ties,
        Files files,
        boolean perLine,
        Related related) {

    /** A context in which entries stand alone. */
    public Context(
            Law law,
            Settings settings,
            Products products,
            Baskets baskets,
            Answers answers,
            Files files,
            boolean perLine) {
        this(
                law,
                settings,
                products,
                baskets,
                Together.NONE,
                answers,
                Ties.NONE,
                files,
                perLine,
                Related.NONE);
    }

    /** What is known of goods by their code. */
    public interface Products {
        /** The liability on a day, such as {@code zero}; empty where the product is not listed. */
        Optional<String> liability(String product, LocalDate day);

        /** What a bundle is made of on a day; nothing where the code is of no bundle. */
        default List<Bundles.Part> parts(String product, LocalDate day) {
            return List.of();
        }
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
                together,
                answers,
                ties,
                files,
                otherSettings.roundingPerLine(),
                related);
    }

    /** The same under the rounding the book did not choose. */
    public Context withOtherRounding() {
        return new Context(
                law, settings, products, baskets, together, answers, ties, files, !perLine,
                related);
    }

    Optional<Rounding> lineRounding() {
        return lineRounding(perLine);
    }

    static Optional<Rounding> lineRounding(boolean perLine) {
        return perLine ? Optional.of(Rounding.NEAREST_PENNY) : Optional.empty();
    }
}
