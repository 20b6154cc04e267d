package quarterfold.intake;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import quarterfold.money.Amount;

/** The columns of tax beside the prices of a row: whose tax each is. */
final class TaxesBeside {
    private final List<MoneyPlan.Part> parts;
    private final Findings findings;

    TaxesBeside(List<MoneyPlan.Part> parts, Findings findings) {
        this.parts = parts;
        this.findings = findings;
    }

    /** A tax that is taken off a price is none of the seller's beside it: what it is, is asked. */
    void askTaken() {
        Optional<MoneyPlan.Part> price = IdentityChoice.price(parts);
        for (MoneyPlan.Part part : parts) {
            boolean taken =
                    part.column().role() == Role.TAX
                            && price.filter(p -> IdentityChoice.way(part, p) < 0).isPresent();
            if (taken) {
                findings.ask(
                        new Question(
                                "column/" + part.column().reference(),
                                "'%s' takes %s off the prices; is it tax the channel withholds, or a fee?"
                                        .formatted(
                                                part.column().reference(),
                                                new Amount(Math.abs(part.column().sum()))),
                                List.of("withheld", "fee"),
                                true));
            }
        }
    }

    /** Prices whose tax has a column to itself; where it is shared by several, none. */
    Map<Column, Column> ofPrices() {
        Map<Column, Column> taxes = new LinkedHashMap<>();
        Optional<Column> tax = one(Role.TAX);
        Optional<Column> ofDelivery = one(Role.DELIVERY_TAX);
        Optional<Column> delivery = one(Role.DELIVERY);
        Optional<Column> price = IdentityChoice.price(parts).map(MoneyPlan.Part::column);
        boolean withheld = one(Role.WITHHELD).isPresent();
        boolean alone =
                one(Role.DISCOUNT).isEmpty() && (delivery.isEmpty() || ofDelivery.isPresent());
        if (ofDelivery.isPresent() && (withheld || delivery.isEmpty() || !alone)) {
            findings.unsound(
                    "found the tax on delivery apart, in '%s', beside %s; expected delivery beside it, and no discount or withheld tax, which share the tax of the row: add the taxes up in one column"
                            .formatted(
                                    ofDelivery.get().reference(),
                                    MoneyPlanner.names(
                                            parts.stream().map(MoneyPlan.Part::column).toList())));
            return Map.of();
        }
        ofDelivery.ifPresent(t -> taxes.put(delivery.orElseThrow(), t));
        boolean own = tax.isPresent() && alone && !withheld && price.isPresent();
        if (own && price.get().factors().isEmpty()) {
            taxes.put(price.get(), tax.get());
        } else if (ofDelivery.isPresent() && tax.isPresent()) {
            findings.unsound(
                    "found '%s' beside '%s' and no price that its tax is on; expected one, such as Price"
                            .formatted(tax.get().reference(), ofDelivery.get().reference()));
        }
        return taxes;
    }

    private Optional<Column> one(Role role) {
        return parts.stream().map(MoneyPlan.Part::column).filter(c -> c.role() == role).findFirst();
    }
}
