package quarterfold.independent;

import java.util.List;

/** Every kind of event the generator knows; a new one is a class and a line here. */
final class Categories {

    private Categories() {}

    static List<Category> all() {
        return List.of(
                new TaxedSales(Liability.NOT_EXEMPT),
                new TaxedSales(Liability.NOT_EXEMPT),
                new MixedBaskets(),
                new ChannelSales(),
                new SalesThatLeave(),
                new UkPurchases(),
                new UkPurchases(),
                new CostsWithoutVat(),
                new ServicesFromAbroad(),
                new Imports(),
                new AgentsBills(),
                new GoodsIntoNorthernIreland(),
                new Money(),
                new Unsettled(),
                new ExportsWithoutEvidence(),
                new MarginGoods(),
                new GoodsGivenAway(),
                new CustomerAccounts(),
                new Vouchers(),
                new LateDocuments());
    }

    /** Those that can only stand alone: what is beside them would count otherwise. */
    static List<Category> alone() {
        return List.of(new TaxedSales(List.of(Liability.STANDARD, Liability.EXEMPT)));
    }
}
