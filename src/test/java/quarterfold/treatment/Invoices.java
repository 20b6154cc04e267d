package quarterfold.treatment;

import java.util.List;
import quarterfold.ledger.SampleLine;

/** An invoice to a customer, a bill of a supplier, and the payments of each. */
final class Invoices {

    private Invoices() {}

    static SampleLine sale(String day) {
        return SampleLine.of("sale")
                .on(day)
                .rate("20")
                .gross("1200")
                .document("INV-1")
                .party("Customer", "GB", "");
    }

    static SampleLine purchase(String day) {
        return SampleLine.of("purchase")
                .on(day)
                .printed("1000", "200")
                .rate("20")
                .document("B-1")
                .party("Supplier", "GB", "GB101747696")
                .evidence("invoice");
    }

    static SampleLine received(String day, String money) {
        return SampleLine.of("customer-payment")
                .on(day)
                .gross(money)
                .document("INV-1")
                .party("Customer", "GB", "");
    }

    static SampleLine paidOut(String day, String money) {
        return SampleLine.of("supplier-payment")
                .on(day)
                .gross(money)
                .document("B-1")
                .party("Supplier", "GB", "GB101747696");
    }

    static List<String> without(String what, List<String> happens) {
        return happens.stream().filter(h -> !h.contains(what)).toList();
    }
}
