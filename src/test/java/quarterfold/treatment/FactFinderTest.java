package quarterfold.treatment;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.law.Fact;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;

/** What a profile says, in the words of the treatment table. */
class FactFinderTest {

    private static final LocalDate DAY = LocalDate.of(2026, 8, 1);

    private static Map<Fact, String> facts(SampleLine line) {
        return new FactFinder(Treating.LAW, SampleSettings.GB).of(line.entry(1).profile(), DAY);
    }

    /** Of a line that says nothing else: a sale from the book's own stock to a consumer at home. */
    @Test
    void aBareSale() {
        assertThat(facts(SampleLine.of("sale")))
                .containsOnly(
                        Map.entry(Fact.CURRENCY, "home"),
                        Map.entry(Fact.SELLER, "uk"),
                        Map.entry(Fact.NORTHERN_IRELAND, "no"),
                        Map.entry(Fact.KIND, "sale"),
                        Map.entry(Fact.STARTS, "gb"),
                        Map.entry(Fact.GOES, "gb"),
                        Map.entry(Fact.CUSTOMER, "consumer"),
                        Map.entry(Fact.CUSTOMER_VAT, "none"),
                        Map.entry(Fact.CHANNEL_COLLECTS, "none"),
                        Map.entry(Fact.SUPPLIER, "unstated"),
                        Map.entry(Fact.SUPPLIER_VAT, "none"),
                        Map.entry(Fact.EVIDENCE, "unstated"),
                        Map.entry(Fact.BLOCKED, "none"),
                        Map.entry(Fact.SETTLEMENT, "no"),
                        Map.entry(Fact.CATEGORY, ""));
    }

    /** VAT (Input Tax) Order 1992: how much of a category's VAT is blocked. */
    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource({
        "'', none",
        "stock, none",
        "client-entertaining, full",
        "car-hire, part",
        "helicopter, unknown"
    })
    void whatIsBlocked(String category, String blocked) {
        assertThat(facts(SampleLine.of("expense").category(category)))
                .containsEntry(Fact.BLOCKED, blocked)
                .containsEntry(Fact.CATEGORY, category);
    }

    /** Goods bought start where their supplier is, goods sold at the book's stock. */
    @ParameterizedTest(name = "{0} from {1} to {2}, party in {3}: {4} to {5}")
    @CsvSource({
        "purchase, '', '', DE, eu, gb",
        "purchase, '', '', '', gb, gb",
        "purchase, US, '', DE, elsewhere, gb",
        "sale, '', '', DE, gb, gb",
        "sale, DE, '', '', eu, unstated",
        "sale, XI, '', '', ni, ni",
        "sale, '', US, '', gb, elsewhere"
    })
    void whereGoodsStartAndGo(
            String kind, String from, String to, String country, String starts, String goes) {
        assertThat(facts(SampleLine.of(kind).goods(from, to).party("X", country, "")))
                .containsEntry(Fact.STARTS, starts)
                .containsEntry(Fact.GOES, goes);
    }
}
