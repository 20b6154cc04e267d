package quarterfold.papers;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.HashMap;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import quarterfold.ledger.Kind;
import quarterfold.period.VatReturn;

class ReturnTextTest {

    @Test
    void json() {
        assertThat(ReturnJson.of(Samples.small().vatReturn()))
                .isEqualTo(
                        "{\"period\":{\"start\":\"2026-07-01\",\"end\":\"2026-09-30\","
                                + "\"due\":\"2026-11-07\"},\"status\":\"closed\",\"boxes\":{"
                                + "\"1\":\"125.83\",\"2\":\"0.00\",\"3\":\"125.83\","
                                + "\"4\":\"108.50\",\"5\":\"17.33\",\"6\":\"238\",\"7\":\"552\","
                                + "\"8\":\"0\",\"9\":\"0\"},\"adjustments\":[],\"direction\":\"pay\",\"queries\":1}");
    }

    @Test
    void csv() {
        assertThat(ReturnCsv.of(Samples.small().vatReturn()))
                .isEqualTo(
                        """
                        box,label,figure,exact,adjusted,export_name
                        1,VAT due on sales and other outputs,125.83,125.8283,0.00,vatDueSales
                        2,VAT due on goods acquired in Northern Ireland from EU member states,0.00,0.00,0.00,vatDueAcquisitions
                        3,Total VAT due: box 1 plus box 2,125.83,125.83,0.00,totalVatDue
                        4,"VAT reclaimed on purchases and other inputs, goods acquired from the EU included",108.50,108.50,0.00,vatReclaimedCurrPeriod
                        5,Difference between box 3 and box 4,17.33,17.33,0.00,netVatDue
                        6,"Total value of sales and all other outputs, without VAT",238,238.1817,0.00,totalValueSalesExVAT
                        7,"Total value of purchases and all other inputs, without VAT",552,552.52,0.00,totalValuePurchasesExVAT
                        8,"Value of goods dispatched from Northern Ireland to EU member states and related costs, without VAT",0,0.00,0.00,totalValueGoodsSuppliedExVAT
                        9,"Value of goods acquired in Northern Ireland from EU member states and related costs, without VAT",0,0.00,0.00,totalAcquisitionsExVAT
                        """
                                .replace("\n", "\r\n"));
    }

    @Test
    void csvSaysWhatIsNoEntrys() {
        assertThat(ReturnCsv.of(Samples.adjusted().vatReturn()))
                .contains(
                        "1,VAT due on sales and other outputs,750.00,749.9993,749.9993,vatDueSales")
                .contains(",387.66,387.66,-12.34,vatReclaimedCurrPeriod")
                .contains(",2000,2000.00,0.00,totalValuePurchasesExVAT");
    }

    @Test
    void jsonHasEachAdjustment() {
        assertThat(ReturnJson.of(Samples.adjusted().vatReturn()))
                .contains(
                        "\"adjustments\":[{\"name\":\"flat-rate\",\"about\":\"2026-07-01 to 2026-09-30\",\"why\":\"Turnover with VAT 9999.99 at 7.5% is 749.9993.\",\"authority\":\"VAT Regulations 1995\","
                                + "\"net\":\"9250.0001\",\"vat\":\"749.9999\",\"claim\":\"-12.34\",\"boxes\":{\"1\":\"749.9993\",\"6\":\"9999.99\"}},{\"name\":\"partial-exemption-year\",");
    }

    /**
     * The tax authority's published API schema VATReturnDeclaration (application.yaml of the VAT
     * API, version 1.0) and its cross-field rules VAT_TOTAL_VALUE and VAT_NET_VALUE.
     */
    @ParameterizedTest
    @MethodSource("returns")
    void jsonKeepsThePublishedRules(VatReturn vatReturn) throws IOException {
        Map<String, BigDecimal> boxes = boxes(ReturnJson.of(vatReturn));

        assertThat(boxes.keySet()).containsExactlyInAnyOrder("1 2 3 4 5 6 7 8 9".split(" "));
        BigDecimal pence = new BigDecimal("9999999999999.99");
        BigDecimal pounds = new BigDecimal("9999999999999");
        boxes.forEach(
                (box, figure) -> {
                    boolean whole = box.compareTo("6") >= 0;
                    BigDecimal most = whole ? pounds : pence;
                    assertThat(figure).as("box " + box).isBetween(most.negate(), most);
                    assertThat(figure.scale()).as("box " + box).isBetween(0, whole ? 0 : 2);
                });
        BigDecimal due = boxes.getOrDefault("3", BigDecimal.ZERO);
        BigDecimal back = boxes.getOrDefault("4", BigDecimal.ZERO);
        assertThat(boxes)
                .containsEntry(
                        "3",
                        boxes.getOrDefault("1", BigDecimal.ZERO)
                                .add(boxes.getOrDefault("2", BigDecimal.ZERO)))
                .containsEntry("5", due.max(back).subtract(due.min(back)));
        assertThat(boxes.get("5")).isBetween(BigDecimal.ZERO, new BigDecimal("99999999999.99"));
    }

    static Stream<VatReturn> returns() {
        return Stream.of(
                Samples.small().vatReturn(),
                Samples.busy(500).vatReturn(),
                new Samples.Quarter().pack("Nothing Yet", VatReturn.Status.DRAFT).vatReturn(),
                new Samples.Quarter()
                        .source("refunds.csv", "plain-sheet", 2, 2, "-400.00")
                        .sale(Kind.SALE_REFUND, "333.33", "20")
                        .purchase(Kind.PURCHASE_CREDIT, "55.55", "11.11", "11.11")
                        .pack("Only Refunds", VatReturn.Status.DRAFT)
                        .vatReturn());
    }

    private static Map<String, BigDecimal> boxes(String json) throws IOException {
        Map<String, BigDecimal> boxes = new HashMap<>();
        try (JsonParser parser = new JsonFactory().createParser(json)) {
            boolean inside = false;
            for (JsonToken token = parser.nextToken(); token != null; token = parser.nextToken()) {
                if (token == JsonToken.START_OBJECT) {
                    inside = "boxes".equals(parser.currentName());
                } else if (token == JsonToken.END_OBJECT) {
                    inside = false;
                } else if (inside && token == JsonToken.VALUE_STRING) {
                    boxes.put(parser.currentName(), new BigDecimal(parser.getText()));
                }
            }
        }
        return boxes;
    }
}
