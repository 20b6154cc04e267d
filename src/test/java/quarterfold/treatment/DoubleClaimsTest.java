package quarterfold.treatment;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.ledger.Decision;
import quarterfold.ledger.Entry;
import quarterfold.ledger.SampleLine;
import quarterfold.money.Amount;

/**
 * VAT Regulations 1995 reg 29(4): input tax is never deducted twice, whatever kinds of file it came
 * by. Each rule with what it meets and what it must leave alone.
 */
class DoubleClaimsTest {

    private static SampleLine bill(String kind, String document) {
        return SampleLine.of(kind)
                .party("Cobble Hare Couriers Ltd", "GB", "GB101747696")
                .rate("20")
                .document(document)
                .evidence("invoice")
                .printed("100", "20");
    }

    private static Entry entry(long number, long source, SampleLine line) {
        return new Entry(number, source, line.line(number + 1));
    }

    /** The lines as entries 1, 2, 3 …, each of a file of its own. */
    private static List<Treated> files(Treating book, SampleLine... lines) {
        List<Entry> entries = new ArrayList<>();
        for (SampleLine line : lines) {
            entries.add(entry(entries.size() + 1L, entries.size() + 1L, line));
        }
        TreatmentRun run = new TreatmentRun(book.context(entries));
        return entries.stream().map(run::treat).toList();
    }

    private static List<String> asked(Treated treated) {
        return treated.queries().stream().map(Query::id).toList();
    }

    @ParameterizedTest(name = "{0} and {1}")
    @CsvSource({
        "CH-118820, ch 118820, true",
        "CH-118820, CH118820, true",
        "CH-000871, CH-871, true",
        "000871, 871, true",
        "2026/0093, 2026-0093, true",
        "2026/0093, 20260093, true",
        "2026/0093, 2026/93, false",
        "CH-118820, CH-118821, false",
        "10, 1, false",
        "INV 20, INV 2, false"
    })
    void numbersAsTwoPeopleWriteThem(String one, String other, boolean same) {
        List<Treated> both = files(Treating.gb(), bill("expense", one), bill("purchase", other));
        assertThat(both.get(0).claim()).hasToString("20.00");
        assertThat(both.get(1).claim()).hasToString(same ? "0.00" : "20.00");
        assertThat(asked(both.get(1))).isEqualTo(same ? List.of("E2/likely-duplicate") : List.of());
    }

    /** By VAT number, or by name: either is enough, neither is not. */
    @ParameterizedTest(name = "{0} {1}")
    @CsvSource({
        "'COBBLE HARE, COURIERS LTD.', '', true",
        "C. H. Couriers, gb 101 7476 96, true",
        "C. H. Couriers, GB101747641, false"
    })
    void partiesAsTwoPeopleWriteThem(String name, String number, boolean same) {
        List<Treated> both =
                files(
                        Treating.gb(),
                        bill("expense", "CH-1"),
                        bill("expense", "CH-1").party(name, "GB", number));
        assertThat(both.get(1).treatment().equals("likely-duplicate")).isEqualTo(same);
    }

    /** A receipt without a number, and the invoice of its supplier, day and money. */
    @ParameterizedTest(name = "{0} {1} {2}")
    @CsvSource({
        "2026-08-01, 20, CH-1, true",
        "2026-08-01, 20, '', true",
        "2026-08-02, 20, CH-1, false",
        "2026-08-01, 20.01, CH-1, false"
    })
    void withoutANumberByDayAndMoney(String day, String vat, String number, boolean same) {
        List<Treated> both =
                files(
                        Treating.gb(),
                        bill("purchase", number),
                        bill("expense", "").on(day).printed("100", vat));
        assertThat(both.get(1).treatment()).isEqualTo(same ? "likely-duplicate" : "uk-purchase");
        if (same) {
            assertThat(both.get(1).queries())
                    .containsExactly(
                            new Query(
                                    "E2/likely-duplicate",
                                    OptionalLong.of(2),
                                    "sheet-2.csv row 3",
                                    "Document without a number for 120.00 seems to be entered already,"
                                            + " as entry 1. Input tax is claimed once, so this one is in"
                                            + " no box. If it is the same: decide --entry 2 --duplicate-of"
                                            + " 1. If it is another document: decide --entry 2"
                                            + " --treat-as uk-purchase.",
                                    Amount.of("120")));
        }
    }

    /** Two coffees of one file are two; nobody's are not compared; each is met once. */
    @Test
    void rowsOfOneFileWithoutANumberAreEachForThemselves() {
        SampleLine coffee = bill("expense", "");
        SampleLine nobodys = bill("expense", "").party("", "GB", "");
        List<Entry> entries =
                List.of(
                        entry(1, 1, coffee),
                        entry(2, 1, coffee),
                        entry(3, 1, nobodys),
                        entry(4, 2, coffee),
                        entry(5, 2, coffee),
                        entry(6, 2, coffee),
                        entry(7, 2, nobodys),
                        entry(8, 2, bill("expense", "").currency("EUR")));
        DoubleClaims claims =
                DoubleClaims.of(
                        entries::forEach,
                        Treating.LAW,
                        Answers.NONE,
                        e -> Optional.empty(),
                        ImportStatements.NONE);
        assertThat(entries)
                .extracting(e -> claims.of(e, true, true).map(DoubleClaims.Found::other).orElse(0L))
                .containsExactly(0L, 0L, 0L, 1L, 2L, 0L, 0L, 0L);
    }

    /** One receipt for the whole of an invoice of two rates, in either order. */
    @Test
    void aReceiptForAllRowsOfADocument() {
        SampleLine first = bill("expense", "CH-7");
        SampleLine second = bill("expense", "CH-7").printed("50", "10");
        SampleLine receipt = bill("expense", "").printed("150", "30");
        List<Entry> after = List.of(entry(1, 1, first), entry(2, 1, second), entry(3, 2, receipt));
        List<Entry> before = List.of(entry(1, 2, receipt), entry(2, 1, first), entry(3, 1, second));
        assertThat(others(after)).containsExactly(0L, 0L, 1L);
        assertThat(others(before)).containsExactly(0L, 1L, 1L);
    }

    private static List<Long> others(List<Entry> entries) {
        DoubleClaims claims =
                DoubleClaims.of(
                        entries::forEach,
                        Treating.LAW,
                        Answers.NONE,
                        e -> Optional.empty(),
                        ImportStatements.NONE);
        return entries.stream()
                .map(e -> claims.of(e, true, true).map(DoubleClaims.Found::other).orElse(0L))
                .toList();
    }

    /** A credit note, and the same as a purchase of less than nothing: both take from the claim. */
    @Test
    void aCreditInTwoForms() {
        SampleLine credit = bill("purchase-credit", "C-1").printed("10", "2");
        SampleLine negative = bill("purchase", "c 1").printed("-10", "-2");
        SampleLine another = bill("purchase", "c 2").printed("-10", "-2");
        List<Treated> three = files(Treating.gb(), credit, negative, another);
        assertThat(asked(three.get(1))).containsExactly("E2/credit-entered-twice");
        assertThat(three.get(1).boxes()).containsKey("4");
        assertThat(asked(three.get(2))).isEmpty();
        assertThat(asked(files(Treating.gb(), negative, credit).get(1)))
                .containsExactly("E2/credit-entered-twice");
    }

    private static SampleLine certificate(String day) {
        return SampleLine.of("import-vat-paid")
                .vat("386.42")
                .document("26GB0INVENTED04711")
                .evidence("import-certificate")
                .on(day);
    }

    /** Whichever of a line's amounts it is, within 31 days: {@code agent-import-vat}, ours. */
    @ParameterizedTest(name = "{0}: net {1}, VAT {2}: {3}")
    @CsvSource({
        "2026-08-01, 1932.10, 386.42, likely-duplicate",
        "2026-08-01, 322.02, 64.40, likely-duplicate",
        "2026-08-01, 386.42, 77.28, likely-duplicate",
        "2026-07-01, 1932.10, 386.42, likely-duplicate",
        "2026-06-30, 1932.10, 386.42, uk-purchase",
        "2026-09-01, 1932.10, 386.42, likely-duplicate",
        "2026-09-02, 1932.10, 386.42, uk-purchase",
        "2026-08-01, 1932.10, 386.43, uk-purchase",
        "2026-08-01, 386.42, 0, likely-duplicate",
        "2026-08-01, 386.43, 0, no-vat-purchase"
    })
    void importVatBilledAgain(String day, String net, String vat, String treatment) {
        SampleLine line = bill("expense", "CH-9").on(day).printed(net, vat);
        if (vat.equals("0")) {
            line.rate("0");
        }
        for (List<Treated> either :
                List.of(
                        files(Treating.gb(), certificate("2026-08-01"), line),
                        files(Treating.gb(), line, certificate("2026-08-01")))) {
            boolean importFirst = either.get(0).treatment().equals("import-paid");
            Treated certificate = either.get(importFirst ? 0 : 1);
            Treated billed = either.get(importFirst ? 1 : 0);
            assertThat(certificate.treatment()).isEqualTo("import-paid");
            assertThat(certificate.claim()).hasToString("386.42");
            assertThat(billed.treatment()).isEqualTo(treatment);
            assertThat(billed.boxes().containsKey("4")).isEqualTo(treatment.equals("uk-purchase"));
        }
    }

    /** An agent sells no goods: of a purchase its VAT alone may be that of an import. */
    @ParameterizedTest(name = "net {0}, VAT {1}: {2}")
    @CsvSource({
        "1932.10, 386.42, likely-duplicate",
        "322.02, 64.40, uk-purchase",
        "386.42, 77.28, uk-purchase",
        "386.42, 0, likely-duplicate",
        "386.43, 0, no-vat-purchase"
    })
    void goodsOfTheSameAmount(String net, String vat, String treatment) {
        assertThat(
                        files(
                                        Treating.gb(),
                                        certificate("2026-08-01"),
                                        bill("purchase", "CH-9")
                                                .rate(vat.equals("0") ? "0" : "20")
                                                .printed(net, vat))
                                .get(1)
                                .treatment())
                .isEqualTo(treatment);
    }

    /** VATA 1994 s.8: what a supplier abroad charges is due in box 1, whatever it equals. */
    @Test
    void aServiceFromAbroadIsNoImportVat() {
        Treated service =
                files(
                                Treating.gb(),
                                certificate("2026-08-01"),
                                bill("expense", "CH-9")
                                        .party("Courier Inc", "US", "")
                                        .printed("386.42", "0"))
                        .get(1);
        assertThat(service.treatment()).isEqualTo("reverse-charge");
        assertThat(service.boxes()).containsKeys("1", "4");
    }

    @Test
    void importVatBilledAgainIsAsked() {
        Treated billed =
                files(
                                Treating.gb(),
                                certificate("2026-08-01"),
                                bill("expense", "CH-9").printed("1932.10", "386.42"))
                        .get(1);
        assertThat(billed.boxes()).isEmpty();
        assertThat(billed.rule()).isEqualTo("D10");
        assertThat(billed.queries())
                .containsExactly(
                        new Query(
                                "E2/import-vat-billed",
                                OptionalLong.of(2),
                                "sheet-2.csv row 3",
                                "Document CH-9 charges 2318.52, and its amount is the import VAT of entry"
                                        + " 1, whose certificate or statement is the evidence for it. Input"
                                        + " tax is claimed once, so this one is in no box. If it"
                                        + " is that import VAT: decide --entry 2 --duplicate-of 1. If it"
                                        + " is another cost: decide --entry 2 --treat-as uk-purchase.",
                                Amount.of("2318.52")));
        assertThat(billed.evidence().orElseThrow().reasons())
                .contains("seems to be the import VAT of entry 1");
    }

    @ParameterizedTest(name = "{0} {1}: {2}")
    @CsvSource({
        "DUPLICATE_OF, 1, duplicate, 0.00",
        "TREAT_AS, uk-purchase, uk-purchase, 386.42",
        "DISALLOW, '', likely-duplicate, 0.00"
    })
    void aPersonSaysWhatTheLineIs(
            Decision.Action action, String value, String treatment, String claim) {
        Decision decision =
                new Decision(
                        1,
                        Decision.Target.ENTRY,
                        "2",
                        action,
                        value,
                        "looked at it",
                        "Ada Fern",
                        LocalDate.of(2026, 8, 20));
        Treated billed =
                files(
                                Treating.gb().deciding(decision),
                                certificate("2026-08-01"),
                                bill("expense", "CH-9").printed("1932.10", "386.42"))
                        .get(1);
        assertThat(billed.claim()).hasToString(claim);
        if (action != Decision.Action.DISALLOW) {
            assertThat(billed.treatment()).isEqualTo(treatment);
            assertThat(billed.queries()).isEmpty();
        }
    }

    /** The same of a postponed statement, and of an import that only the agent's bill shows. */
    @Test
    void otherImportsOfTheSameVat() {
        SampleLine postponed =
                SampleLine.of("import-vat-postponed")
                        .printed("1932.10", "386.42")
                        .document("26GB0INVENTED04933")
                        .evidence("postponed-statement");
        SampleLine billedAsImport =
                SampleLine.of("import-vat-paid")
                        .vat("386.42")
                        .party("Cobble Hare Couriers Ltd", "GB", "")
                        .document("CH-9")
                        .evidence("missing");
        SampleLine otherCertificate = certificate("2026-08-01").document("26GB0INVENTED05298");
        List<Treated> all = files(Treating.gb(), postponed, billedAsImport, otherCertificate);
        assertThat(all)
                .extracting(Treated::treatment)
                .containsExactly("import-postponed", "likely-duplicate", "import-paid");
        assertThat(asked(all.get(1))).containsExactly("E2/likely-duplicate");
        assertThat(Treating.gb().one(billedAsImport).treatment()).isEqualTo("import-unevidenced");
    }

    /** VATA 1994 s.24(1): duty is not VAT, whatever it equals. */
    @Test
    void dutyIsACostAlone() {
        List<Treated> both =
                files(
                        Treating.gb(),
                        certificate("2026-08-01"),
                        SampleLine.of("import-duty").gross("386.42").document("CH-9"));
        assertThat(both.get(1).treatment()).isEqualTo("import-duty");
        assertThat(both.get(1).boxes()).isEmpty();
        assertThat(both.get(1).queries()).isEmpty();
    }

    private static SampleLine fee(String document, String net, String vat) {
        return billed("fee", document, net, vat)
                .party("Quaylark Services (Britain) Ltd", "GB", "GB101747696")
                .channel("Quaylark", "no");
    }

    private static SampleLine billed(String kind, String document, String net, String vat) {
        return SampleLine.of(kind)
                .category("channel-fee")
                .rate("20")
                .document(document)
                .evidence("invoice")
                .printed(net, vat)
                .on("2026-08-31");
    }

    private static SampleLine line(String day) {
        return SampleLine.of("fee")
                .channel("Quaylark", "no")
                .category("channel-fee")
                .settlement("QL-0418")
                .gross("12")
                .on(day);
    }

    /** A settlement's fee lines are money only, so the month's invoice claims alone: reg 29(2). */
    @Test
    void linesOfASettlementAndTheInvoiceThatTheySumTo() {
        List<Treated> all =
                files(
                        Treating.gb(),
                        line("2026-08-02"),
                        line("2026-08-20"),
                        fee("QS-70988", "20", "4"));
        assertThat(all)
                .extracting(Treated::treatment)
                .containsExactly("fee-on-settlement", "fee-on-settlement", "uk-purchase");
        assertThat(all.get(0).boxes()).isEmpty();
        assertThat(all.get(0).evidence()).isEmpty();
        assertThat(all).allSatisfy(t -> assertThat(t.queries()).isEmpty());
    }

    /** Lines that claim, up to 31 days before the invoice: {@code fee-invoice-lines}, ours. */
    @ParameterizedTest(name = "{0} of {1}: {2}")
    @CsvSource({
        "2026-08-31, Quaylark, true",
        "2026-07-31, QUAYLARK, true",
        "2026-07-30, Quaylark, false",
        "2026-09-01, Quaylark, false",
        "2026-08-20, Norrowby Lane, false"
    })
    void linesThatClaimAndTheInvoice(String day, String channel, boolean twice) {
        SampleLine claiming =
                line(day)
                        .channel(channel, "no")
                        .party("", "GB", "GB101747696")
                        .evidence("invoice")
                        .rate("20");
        for (int invoice : new int[] {0, 1}) {
            SampleLine[] order =
                    invoice == 0
                            ? new SampleLine[] {fee("QS-70988", "20", "4"), claiming}
                            : new SampleLine[] {claiming, fee("QS-70988", "20", "4")};
            List<Treated> both = files(Treating.gb(), order);
            assertThat(both.get(1 - invoice).treatment()).isEqualTo("uk-purchase");
            assertThat(both.get(invoice).treatment())
                    .isEqualTo(twice ? "likely-duplicate" : "uk-purchase");
        }
    }

    @Test
    void feesClaimedTwiceAreAsked() {
        Treated invoice =
                files(
                                Treating.gb(),
                                line("2026-08-02")
                                        .party("", "GB", "GB101747696")
                                        .evidence("invoice")
                                        .printed("10", "2"),
                                fee("QS-70988", "20", "4"))
                        .get(1);
        assertThat(invoice.rule()).isEqualTo("D11");
        assertThat(invoice.queries())
                .containsExactly(
                        new Query(
                                "E2/fees-claimed-twice",
                                OptionalLong.of(2),
                                "sheet-2.csv row 3",
                                "Document QS-70988 seems to charge fees of 24.00, and fees of the same channel are"
                                        + " claimed on its settlements too, such as entry 1. Input tax is"
                                        + " claimed once, so the document is in no box, and what a closed"
                                        + " return claimed on it is taken back. If it is for those fees:"
                                        + " decide --entry 2 --duplicate-of 1. If it is for others: decide"
                                        + " --entry 2 --treat-as uk-purchase.",
                                Amount.of("24")));
    }

    /** An e-invoice does not say that it is for fees: it is a purchase of the channel's company. */
    @ParameterizedTest(name = "{0} of {1} {2}: {3}")
    @CsvSource({
        "purchase, Quaylark, '', fees-claimed-twice",
        "expense, QUAYLARK, '', fees-claimed-twice",
        "purchase, Quaylark Services (Britain) Ltd, GB101747696, fees-claimed-twice",
        "purchase, Quaylark Services (Britain) Ltd, '', ''",
        "purchase, Cobble Hare Couriers Ltd, GB000480437, ''",
        "purchase-credit, Quaylark, '', ''"
    })
    void aChannelsInvoiceEnteredAsAPurchase(
            String kind, String party, String number, String query) {
        SampleLine claiming =
                line("2026-08-02")
                        .party("", "GB", "GB101747696")
                        .evidence("invoice")
                        .printed("10", "2");
        SampleLine bought = billed(kind, "QS-70988", "20", "4").party(party, "GB", number);
        assertThat(asked(files(Treating.gb(), claiming, bought).get(1)))
                .filteredOn(id -> id.equals("E2/fees-claimed-twice"))
                .hasSize(query.isEmpty() ? 0 : 1);
    }

    /** An invoice that names its channel is of that one, though one company bills for two. */
    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource({"Quaylark, false", "Norrowby, true"})
    void anInvoiceOfOneOfTwoChannels(String channel, boolean twice) {
        SampleLine claiming =
                line("2026-08-02")
                        .channel("Norrowby", "no")
                        .party("Quaylark Services (Britain) Ltd", "GB", "GB101747696")
                        .evidence("invoice")
                        .printed("10", "2");
        SampleLine invoice = fee("QS-70988", "20", "4").channel(channel, "no");
        assertThat(asked(files(Treating.gb(), claiming, invoice).get(1)))
                .isEqualTo(twice ? List.of("E2/fees-claimed-twice") : List.of());
    }

    /** What is bought as goods is no fee, even of the channel's company. */
    @ParameterizedTest(name = "{0} of {1}: {2}")
    @CsvSource({
        "purchase, stock, false",
        "expense, packaging, false",
        "purchase, capital-goods, false",
        "purchase, '', true",
        "expense, software, true",
        "fee, stock, true"
    })
    void goodsOfTheChannel(String kind, String category, boolean asked) {
        SampleLine claiming =
                line("2026-08-02").party("", "GB", "").evidence("invoice").printed("10", "2");
        SampleLine bought =
                billed(kind, "QS-70988", "20", "4")
                        .party("Quaylark", "GB", "GB101747696")
                        .category(category);
        assertThat(asked(files(Treating.gb(), claiming, bought).get(1)))
                .isEqualTo(asked ? List.of("E2/fees-claimed-twice") : List.of());
    }

    /** An invoice that was entered as fees tells under what name and number the channel bills. */
    @Test
    void aChannelKnownByAnEarlierInvoice() {
        SampleLine claiming =
                line("2026-08-02").party("", "GB", "").evidence("invoice").printed("10", "2");
        SampleLine earlier = fee("QS-60001", "5", "1").on("2026-05-31");
        SampleLine bought =
                billed("purchase", "QS-70988", "20", "4")
                        .party("Quaylark Services Britain", "GB", "GB101747696");
        assertThat(asked(files(Treating.gb(), claiming, bought, earlier).get(1)))
                .containsExactly("E2/fees-claimed-twice");
        assertThat(asked(files(Treating.gb(), claiming, bought).get(1))).isEmpty();
    }

    /** Tables frozen by older closes know of no such days, and ask nothing. */
    @Test
    void olderTablesDoNotLook() {
        DoubleClaims claims =
                DoubleClaims.of(
                        List.of(entry(1, 1, certificate("1973-03-31")))::forEach,
                        Treating.LAW,
                        Answers.NONE,
                        e -> Optional.empty(),
                        ImportStatements.NONE);
        SampleLine line = bill("expense", "CH-9").on("1973-04-01").printed("1932.10", "386.42");
        assertThat(claims.of(entry(2, 2, line), true, true)).isEqualTo(Optional.empty());
    }
}
