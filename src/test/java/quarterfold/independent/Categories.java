package quarterfold.independent;

import java.util.List;

/** Every kind of event the generator knows; a new one is a class and a line here. */
final class Categories {

    private Categories() {}

    static List<Category> all() {
        return List.of(
                new TaxedSales(),
                new TaxedSales(),
                new MixedBaskets(),
                new ChannelSales(),
                new SalesThatLeave(),
                new UkPurchases(),
                new UkPurchases(),
                new CostsWithoutVat(),
                new ServicesFromAbroad(),
                new Imports(),
                new GoodsIntoNorthernIreland(),
                new Money(),
                new Unsettled());
    }
}
