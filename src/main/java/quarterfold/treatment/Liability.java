package quarterfold.treatment;

import java.util.Optional;
import quarterfold.money.Amount;
import quarterfold.money.Percent;

/**
 * The rate category of an entry, or of a share of it.
 *
 * @param category a word of {@link quarterfold.law.Fact#LIABILITY}
 * @param percent the percentage the document states; empty where the category's own on the tax
 *     point is to be used
 */
record Liability(String category, Optional<Percent> percent) {

    static final Liability UNSTATED = of("unstated");
    static final Liability STANDARD = of("standard");

    static Liability of(String category) {
        return new Liability(category, Optional.empty());
    }

    /** A share of an order's or a bundle's goods, by price. */
    record Share(Liability liability, Amount price) {}
}
