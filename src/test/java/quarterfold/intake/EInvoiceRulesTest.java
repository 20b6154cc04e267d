package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What is called valid here against the published schemas and rules of EN 16931. */
class EInvoiceRulesTest {

    private static MadeInvoice usual() {
        return new MadeInvoice("INV-1001")
                .line("Bowls", "100.00", "S", "20")
                .line("Mugs", "50.00", "S", "20")
                .line("Books", "30.00", "Z", "0");
    }

    static Stream<Arguments> valid() {
        MadeInvoice.Party irish = new MadeInvoice.Party("Adverts Abroad", "IE", "IE6388047V");
        MadeInvoice.Party unnumbered = new MadeInvoice.Party("Corner Shop", "GB", "");
        MadeInvoice.Party customer = new MadeInvoice.Party("Alder & Wren", "GB", "");
        return Stream.of(
                Arguments.of("two categories", usual()),
                Arguments.of(
                        "allowance and charge",
                        usual().allowance("10.00", "S", "20").charge("5.00", "S", "20")),
                Arguments.of(
                        "all days and references",
                        usual().with("BT-7", "2026-07-18")
                                .with("BT-72", "2026-07-17")
                                .with("BT-10", "Till 4")
                                .with("BT-13", "PO-7")
                                .with("BT-25", "INV-0900")
                                .with("BT-26", "2026-06-30")
                                .with("BT-73", "2026-07-01")
                                .with("BT-74", "2026-07-31")
                                .with("BT-22", "With thanks")),
                Arguments.of("credit note", usual().credit().with("BT-25", "INV-0900")),
                Arguments.of(
                        "negative invoice",
                        new MadeInvoice("INV-1002").line("Bowls returned", "-40.00", "S", "20")),
                Arguments.of(
                        "paid before, and rounded",
                        usual().with("BT-113", "100.00").with("BT-114", "0.50")),
                Arguments.of(
                        "sterling VAT beside euros",
                        usual().with("BT-5", "EUR").with("BT-6", "GBP").with("BT-111", "25.60")),
                Arguments.of(
                        "exempt", new MadeInvoice("INV-1003").line("Insurance", "80.00", "E", "0")),
                Arguments.of(
                        "reverse charge",
                        new MadeInvoice("INV-1004")
                                .from(irish)
                                .line("Adverts", "30.00", "AE", "0")),
                Arguments.of(
                        "goods from a member state",
                        new MadeInvoice("INV-1005")
                                .from(irish)
                                .with("BT-72", "2026-07-17")
                                .with("BT-80", "GB")
                                .line("Linen", "90.00", "K", "0")),
                Arguments.of(
                        "export",
                        new MadeInvoice("INV-1006").from(irish).line("Linen", "90.00", "G", "0")),
                Arguments.of(
                        "not subject to VAT",
                        new MadeInvoice("INV-1007")
                                .from(unnumbered)
                                .to(customer)
                                .line("Paper", "12.00", "O", "")));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("valid")
    void whatTiesHereIsValid(String name, MadeInvoice invoice) throws IOException {
        for (String xml : List.of(invoice.ubl(), invoice.cii())) {
            assertThat(rulesBroken(xml)).isEmpty();
            assertThat(PublishedRules.broken(xml)).isEmpty();
        }
    }

    static Stream<Arguments> invalid() {
        return Stream.of(
                Arguments.of("BR-CO-10", usual().with("BT-106", "181.00")),
                Arguments.of(
                        "BR-CO-11", usual().allowance("10.00", "S", "20").with("BT-107", "9.00")),
                Arguments.of(
                        "BR-CO-12", usual().charge("10.00", "S", "20").with("BT-108", "11.00")),
                Arguments.of("BR-CO-13", usual().with("BT-109", "181.00")),
                Arguments.of("BR-CO-14", usual().with("BT-110", "31.00")),
                Arguments.of("BR-CO-15", usual().with("BT-112", "211.00")),
                Arguments.of("BR-CO-16", usual().with("BT-115", "209.00")),
                Arguments.of("BR-CO-17", usual().vat("S", "20", "33.00")),
                Arguments.of("BR-S-08", usual().with("BT-116 S20", "152.00")),
                Arguments.of("BR-Z-08", usual().with("BT-116 Z0", "32.00")),
                Arguments.of("BR-Z-09", usual().vat("Z", "0", "2.00")),
                Arguments.of(
                        "BR-E-09",
                        new MadeInvoice("INV-1")
                                .line("Cover", "80.00", "E", "0")
                                .vat("E", "0", "1.00")),
                Arguments.of(
                        "BR-AE-09",
                        new MadeInvoice("INV-1")
                                .line("Chips", "80.00", "AE", "0")
                                .vat("AE", "0", "1.00")));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("invalid")
    void whatIsBrokenIsInvalidByTheSameRule(String rule, MadeInvoice invoice) throws IOException {
        for (String xml : List.of(invoice.ubl(), invoice.cii())) {
            assertThat(rulesBroken(xml)).contains(rule);
            assertThat(PublishedRules.broken(xml)).contains(rule);
        }
    }

    /**
     * The rules the reader finds broken; every problem but those, where it refuses the document.
     */
    private static Set<String> rulesBroken(String xml) throws IOException {
        Set<String> broken = new TreeSet<>();
        InvoiceTies.broken(Invoices.read(xml)).forEach(b -> broken.add(b.rule()));
        return broken;
    }
}
