package quarterfold.treatment;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import quarterfold.ledger.Bundles;
import quarterfold.ledger.Products;

/** A book's goods: the liability of each product, and what a bundle is made of. */
public record Goods(Products products, Bundles bundles) implements Context.Products {

    @Override
    public Optional<String> liability(String product, LocalDate day) {
        return products.liability(product, day);
    }

    @Override
    public List<Bundles.Part> parts(String product, LocalDate day) {
        return bundles.parts(product, day);
    }
}
