package quarterfold.treatment;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.ledger.Decision;
import quarterfold.ledger.Particular;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;
import quarterfold.treatment.EvidenceGrade.Grade;

/** How good a document is, why, and what that does to the claim. */
class EvidenceTest {

    private static final LocalDate DAY = LocalDate.of(2026, 8, 20);

    private static SampleLine bill(String evidence, String net, String vat) {
        return SampleLine.of("purchase")
                .party("Example supplier", "GB", "GB101747696")
                .rate("20")
                .category("stock")
                .document("S-1")
                .evidence(evidence)
                .printed(net, vat);
    }

    private static SampleLine receipt(String gross) {
        return SampleLine.of("expense")
                .party("Example shop", "GB", "GB101747696")
                .rate("20")
                .category("stationery")
                .document("R-1")
                .evidence("simplified")
                .gross(gross);
    }

    private static Decision decided(String entry, Decision.Action action, String value) {
        return new Decision(
                1, Decision.Target.ENTRY, entry, action, value, "looked at it", "Ada Fern", DAY);
    }

    private static EvidenceGrade grade(Treated treated) {
        return treated.evidence().orElseThrow();
    }

    /** VAT Regulations 1995 reg 14(1): what an invoice shows, as far as an entry can state it. */
    @Test
    void aFullInvoice() {
        Treated treated =
                Treating.gb()
                        .one(
                                bill("invoice", "100", "20")
                                        .particular(Particular.ADDRESSED, "business"));
        assertThat(treated.claim()).hasToString("20.00");
        assertThat(grade(treated))
                .isEqualTo(
                        new EvidenceGrade(
                                Grade.FULL,
                                List.of(
                                        "invoice, as entered",
                                        "made out to the business",
                                        "VAT number GB101747696: its check digits hold",
                                        "VAT of 20.00 agrees with 20% of the value without VAT",
                                        "entered: number, tax point, supplier, supplier VAT number,"
                                                + " customer, description, rate, net, total net, total VAT",
                                        "to be seen on the document: issue date, quantity, unit price")));
    }

    @Test
    void enoughIsWhatSpeaksForItselfButDoesNotStateAll() {
        Treated treated = Treating.gb().one(bill("invoice", "100", "20").document(""));
        assertThat(treated.claim()).hasToString("20.00");
        assertThat(grade(treated).grade()).isEqualTo(Grade.ENOUGH);
        assertThat(grade(treated).reasons()).contains("not entered: number, customer");
    }

    /** T-403, VAT Regulations 1995 reg 16A: 250 with VAT, of the whole document, not of a row. */
    @ParameterizedTest(name = "rows of {0} and {1}: {2}")
    @CsvSource({
        "125.00, 125.00, full, 250.00",
        "125.00, 125.01, in question, 250.01",
        "250.00, 0.01, in question, 250.01",
        "250.00, -10.00, full, 240.00"
    })
    void theLimitIsOnTheWholeDocument(String one, String other, String grade, String total) {
        List<Treated> rows =
                Treating.gb().all(receipt(one).product("PAPER"), receipt(other).product("PENS"));
        assertThat(rows).extracting(t -> grade(t).grade().code()).containsOnly(grade);
        assertThat(rows)
                .allSatisfy(
                        t ->
                                assertThat(grade(t).reasons())
                                        .anyMatch(r -> r.contains("document comes to " + total)));
        assertThat(rows).allMatch(t -> t.claim().isZero() == grade.equals("in question"));
    }

    @Test
    void anotherSuppliersNumberOneIsAnotherDocument() {
        List<Treated> rows =
                Treating.gb()
                        .all(
                                receipt("150"),
                                receipt("150").party("Another shop", "GB", "GB264228756"));
        assertThat(rows).extracting(t -> t.claim().toString()).containsOnly("25.00");
    }

    /** T-410: HMRC manuals VAEC9630 and VAEC9670; the check digits prove a slip, no more. */
    @Test
    void aNumberThatFailsBlocksTheClaimUntilConfirmed() {
        SampleLine wrong =
                bill("invoice", "200", "40").party("Example supplier", "GB", "GB123456789");
        Treated asked = Treating.gb().one(wrong);
        assertThat(Treating.told(asked))
                .startsWith("unclaimed U11a")
                .endsWith("supplier-number-fails");
        assertThat(grade(asked).grade()).isEqualTo(Grade.IN_QUESTION);
        assertThat(grade(asked).reasons())
                .contains("VAT number GB123456789: fails its check digits");

        Treated seen =
                Treating.gb()
                        .deciding(decided("1", Decision.Action.EVIDENCE_SEEN, "invoice"))
                        .one(wrong);
        assertThat(Treating.told(seen)).startsWith("uk-purchase U15a").endsWith("asks nothing");
        assertThat(grade(seen).reasons())
                .contains(
                        "invoice: seen, as Ada Fern said on 2026-08-20: looked at it",
                        "VAT number GB123456789: fails its check digits, but was confirmed by who saw it");

        Treated stated =
                Treating.gb()
                        .deciding(decided("1", Decision.Action.STATE, "party_vat=GB101747696"))
                        .one(wrong);
        assertThat(stated.claim()).hasToString("40.00");
    }

    /** VAT Regulations 1995 reg 14(1)(e); VAT Notice 700 para 19.6.5 (secondary source). */
    @ParameterizedTest(name = "to {0} for {1}: {2}")
    @CsvSource({
        "business, stationery, enough, 20.00",
        "other, stationery, in question, 0.00",
        "employee, stationery, in question, 0.00",
        "employee, subsistence, enough, 20.00",
        "employee, car-running, enough, 20.00"
    })
    void inWhoseName(String addressed, String category, String grade, String claim) {
        Treated treated =
                Treating.gb()
                        .one(
                                bill("invoice", "100", "20")
                                        .document("")
                                        .category(category)
                                        .particular(Particular.ADDRESSED, addressed));
        assertThat(grade(treated).grade().code()).isEqualTo(grade);
        assertThat(treated.claim()).hasToString(claim);
        assertThat(treated.queries())
                .extracting(Query::id)
                .isEqualTo(claim.equals("0.00") ? List.of("E1/made-out-to-another") : List.of());
    }

    /** VAT Regulations 1995 reg 29(2): other proof counts where the authority accepts it. */
    @Test
    void otherProofWaitsForADecision() {
        SampleLine proof = bill("alternative", "100", "20");
        Treated asked = Treating.gb().one(proof);
        assertThat(Treating.told(asked))
                .startsWith("unclaimed U18a")
                .endsWith("evidence-alternative");
        assertThat(grade(asked).grade()).isEqualTo(Grade.IN_QUESTION);
        Treated accepted =
                Treating.gb()
                        .deciding(decided("1", Decision.Action.EVIDENCE_SEEN, "alternative"))
                        .one(proof);
        assertThat(accepted.claim()).hasToString("20.00");
        assertThat(grade(accepted).grade().supports()).isTrue();
    }

    @Test
    void nothingHeldIsNoEvidence() {
        Treated treated = Treating.gb().one(bill("missing", "100", "20"));
        assertThat(grade(treated).grade()).isEqualTo(Grade.NONE);
        assertThat(treated.claim().isZero()).isTrue();
    }

    /** HMRC manual VIT31000: a self-billed invoice is evidence under an agreement alone. */
    @Test
    void aSelfBilledInvoiceNamesItsAgreement() {
        assertThat(grade(Treating.gb().one(bill("self-billed", "100", "20"))).reasons())
                .anyMatch(r -> r.startsWith("to be seen on the document: agreement, "));
    }

    /** What is no purchase and no import, and a fee that is money only, is not weighed. */
    @Test
    void notWeighed() {
        assertThat(Treating.gb().one(SampleLine.of("sale").gross("120")).evidence()).isEmpty();
        assertThat(Treating.gb().one(SampleLine.of("import-duty").gross("120")).evidence())
                .isEmpty();
        assertThat(Treating.gb().one(SampleLine.of("fee").gross("3").settlement("QL-1")).evidence())
                .isEmpty();
    }

    /** VAT Regulations 1995 reg 29(4): never deducted twice. */
    @Test
    void theSecondOfTwoIsNotClaimed() {
        List<Treated> both =
                Treating.gb().all(bill("invoice", "100", "20"), bill("invoice", "100", "20"));
        assertThat(both).extracting(t -> t.claim().toString()).containsExactly("20.00", "0.00");
        assertThat(both.get(1).boxes()).isEmpty();
        assertThat(both.get(1).queries())
                .containsExactly(
                        new Query(
                                "E2/likely-duplicate",
                                java.util.OptionalLong.of(2),
                                "sheet-1.csv row 3",
                                "Document S-1 for 120.00 seems to be entered already, as entry 1. Input"
                                        + " tax is claimed once, so this one is in no box. If it"
                                        + " is the same: decide --entry 2 --duplicate-of 1. If it is"
                                        + " another document: decide --entry 2 --treat-as uk-purchase.",
                                quarterfold.money.Amount.of("120")));
        assertThat(grade(both.get(1)).reasons()).contains("seems to be entered before, as entry 1");
    }

    @ParameterizedTest(name = "{0} {1}")
    @CsvSource({"DUPLICATE_OF, 1, duplicate, 0.00", "TREAT_AS, uk-purchase, uk-purchase, 20.00"})
    void aPersonSaysWhetherItIsTheSame(
            Decision.Action action, String value, String treatment, String claim) {
        Treated second =
                Treating.gb()
                        .deciding(decided("2", action, value))
                        .all(bill("invoice", "100", "20"), bill("invoice", "100", "20"))
                        .get(1);
        assertThat(second.treatment()).isEqualTo(treatment);
        assertThat(second.claim()).hasToString(claim);
        assertThat(second.queries()).isEmpty();
    }

    /** Where the first is the one set apart, the second is claimed. */
    @Test
    void theFirstMayBeTheDuplicate() {
        List<Treated> both =
                Treating.gb()
                        .deciding(decided("1", Decision.Action.DUPLICATE_OF, "2"))
                        .all(bill("missing", "100", "20"), bill("invoice", "100", "20"));
        assertThat(both).extracting(t -> t.claim().toString()).containsExactly("0.00", "20.00");
    }

    @Test
    void setAsideItStaysUnclaimedAndIsNotOpen() {
        Treated second =
                Treating.gb()
                        .deciding(decided("2", Decision.Action.SET_ASIDE, ""))
                        .all(bill("invoice", "100", "20"), bill("invoice", "100", "20"))
                        .get(1);
        assertThat(second.claim().isZero()).isTrue();
        assertThat(second.queries()).noneMatch(Query::isOpen);
    }

    /**
     * A credit entered twice would take from the claim twice; leaving it out might claim too much.
     */
    @Test
    void aCreditEnteredTwiceIsAskedAboutAndStays() {
        SampleLine credit =
                SampleLine.of("purchase-credit")
                        .party("Example supplier", "GB", "GB101747696")
                        .rate("20")
                        .document("C-1")
                        .evidence("invoice")
                        .printed("10", "2");
        List<Treated> both = Treating.gb().all(credit, credit);
        assertThat(both).extracting(t -> t.boxes().get("4")).doesNotContainNull();
        assertThat(both.get(1).queries())
                .extracting(Query::id)
                .containsExactly("E2/credit-entered-twice");
    }

    /** Import entries repeat by reference, date and VAT, whichever list they stand on. */
    @Test
    void anImportEnteredTwice() {
        SampleLine postponed =
                SampleLine.of("import-vat-postponed")
                        .printed("1932.10", "386.42")
                        .document("26GB01")
                        .evidence("postponed-statement");
        assertThat(Treating.gb().all(paid(), paid(), postponed, paid().on("2026-08-02")))
                .extracting(Treated::treatment)
                .containsExactly(
                        "import-paid", "likely-duplicate", "likely-duplicate", "import-paid");
    }

    private static SampleLine paid() {
        return SampleLine.of("import-vat-paid")
                .vat("386.42")
                .document("26GB01")
                .evidence("import-certificate");
    }

    /** T-902: the tail of an EORI number is no other importer. */
    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource({
        "GB101747641000, import-paid, 386.42",
        "GB101747641001, import-paid, 386.42",
        "101747641, import-paid, 386.42",
        "GB101747696000, undecided, 0.00",
        "GB10174764100, undecided, 0.00"
    })
    void theImporterIsThisBook(String number, String treatment, String claim) {
        Treated treated =
                Treating.gb()
                        .one(
                                SampleLine.of("import-vat-paid")
                                        .vat("386.42")
                                        .party("", "", number)
                                        .document("26GB01")
                                        .evidence("import-certificate"));
        assertThat(treated.treatment()).isEqualTo(treatment);
        assertThat(treated.claim()).hasToString(claim);
        assertThat(grade(treated).grade())
                .isEqualTo(claim.equals("0.00") ? Grade.IN_QUESTION : Grade.FULL);
    }

    /** VAT Regulations 1995 reg 29(2)(c): whatever the document, the goods are another's. */
    @ParameterizedTest(name = "{0} {1} {2}")
    @CsvSource({
        "import-vat-paid, import-certificate, standard",
        "import-vat-paid, missing, standard",
        "import-vat-paid, import-certificate, flat-rate",
        "import-vat-postponed, postponed-statement, standard",
        "import-vat-postponed, postponed-statement, flat-rate"
    })
    void theImportOfAnotherIsInNoBox(String kind, String evidence, String scheme) {
        SampleLine line =
                SampleLine.of(kind)
                        .vat("386.42")
                        .party("", "", "GB101747696000")
                        .document("26GB01")
                        .evidence(evidence);
        Treating book = Treating.of(SampleSettings.scheme(scheme, "044"));
        assertThat(book.one(line).boxes()).isEmpty();
        assertThat(book.one(line).queries())
                .extracting(Query::id)
                .containsExactly("E1/import-of-another");
        Treated left =
                book.deciding(
                                new Decision(
                                        1,
                                        Decision.Target.ENTRY,
                                        "1",
                                        Decision.Action.DISALLOW,
                                        "",
                                        "not ours",
                                        "Ada Fern",
                                        LocalDate.of(2026, 8, 20)))
                        .one(line);
        assertThat(left.boxes()).isEmpty();
        assertThat(left.queries()).isEmpty();
    }

    /** The same regulation asks for the claimant's number; whether it is asked the book chooses. */
    @ParameterizedTest(name = "{0} {1}: {2}")
    @CsvSource({"own, '', I01", "ask, '', I11", "ask, GB101747641000, I01"})
    void anImporterThatIsNotStated(String choice, String number, String rule) {
        Treated treated =
                Treating.of(SampleSettings.choosing(Map.of("import-importer-unstated", choice)))
                        .one(paid().party("", "", number));
        assertThat(treated.rule()).isEqualTo(rule);
        assertThat(treated.claim()).hasToString(rule.equals("I01") ? "386.42" : "0.00");
        assertThat(treated.boxes().isEmpty()).isEqualTo(rule.equals("I11"));
    }

    /** A file of several importers does not tell whose a row without a number is. */
    @ParameterizedTest(name = "beside {0}: {1}")
    @CsvSource({"GB101747641000, I01", "GB101747641001, I01", "GB101747696000, I09"})
    void anImporterThatIsNotStatedBesideAnother(String other, String rule) {
        Treated unstated =
                Treating.gb()
                        .all(paid(), paid().party("", "", other).document("26GB02").vat("10"))
                        .get(0);
        assertThat(unstated.rule()).isEqualTo(rule);
        assertThat(unstated.boxes().isEmpty()).isEqualTo(rule.equals("I09"));
        assertThat(unstated.queries())
                .extracting(Query::id)
                .isEqualTo(rule.equals("I09") ? List.of("E1/import-importer-unstated") : List.of());
    }

    /** VAT Regulations 1995 reg 14(1)(l): the VAT is stated in sterling. */
    @Test
    void anotherCurrencyIsInQuestion() {
        Treated treated = Treating.gb().one(bill("invoice", "100", "20").currency("EUR"));
        assertThat(grade(treated).grade()).isEqualTo(Grade.IN_QUESTION);
        assertThat(grade(treated).reasons())
                .contains("its amounts are in EUR: the VAT must be stated in GBP");
        assertThat(treated.claim().isZero()).isTrue();
    }

    @Test
    void whatACloseKeeps() {
        Optional<EvidenceGrade> grade =
                Optional.of(new EvidenceGrade(Grade.IN_QUESTION, List.of("one", "two")));
        assertThat(EvidenceGrade.text(grade)).isEqualTo("in question\none\ntwo");
        assertThat(EvidenceGrade.parse("in question\none\ntwo")).isEqualTo(grade);
        assertThat(EvidenceGrade.parse(EvidenceGrade.text(Optional.empty()))).isEmpty();
    }

    /** Reg 14(1)(d): VAT charged without a number to show for it is in question. */
    @ParameterizedTest(name = "{0}, rate {1}, VAT {2}: {3}")
    @CsvSource({
        "GB, '', 20, in question",
        "GB, 20, '', in question",
        "GB, 20, 0, in question",
        "GB, '', '', enough",
        "GB, '', 0, enough",
        "GB, exempt, '', enough",
        "IE, '', '', enough"
    })
    void vatWithoutANumber(String country, String rate, String vat, String grade) {
        SampleLine line =
                SampleLine.of("purchase")
                        .party("Example supplier", country, "")
                        .document("S-1")
                        .category("stock")
                        .evidence("invoice")
                        .rate(rate)
                        .net("100");
        assertThat(grade(Treating.gb().one(vat.isEmpty() ? line : line.vat(vat))).grade().code())
                .isEqualTo(grade);
    }

    /** HMRC manual VAEC9630: the digits of a number from another country are not ours to check. */
    @Test
    void aNumberOfASupplierAbroad() {
        EvidenceGrade failing =
                grade(
                        Treating.gb()
                                .one(
                                        SampleLine.of("expense")
                                                .party("Example platform", "IE", "GB123456789")
                                                .document("S-1")
                                                .evidence("invoice")
                                                .gross("100")));
        assertThat(failing.grade()).isEqualTo(Grade.ENOUGH);
        assertThat(failing.reasons())
                .contains("VAT number GB123456789: fails its check digits")
                .noneMatch(r -> r.contains("confirmed"));
        assertThat(
                        grade(
                                        Treating.gb()
                                                .one(
                                                        bill("invoice", "100", "20")
                                                                .party("X", "", "123456789")))
                                .reasons())
                .as("without a country it is a supplier here")
                .contains("VAT number 123456789: fails its check digits");
    }

    /** VAT Regulations 1995 reg 29(1): the day the document was held is told. */
    @Test
    void sinceWhenItIsHeld() {
        assertThat(
                        grade(
                                        Treating.gb()
                                                .one(
                                                        bill("invoice", "100", "20")
                                                                .particular(
                                                                        Particular.HELD,
                                                                        "2026-08-02")))
                                .reasons())
                .contains("held since 2026-08-02: claimed then");
        assertThat(
                        grade(
                                        Treating.gb()
                                                .one(
                                                        bill("invoice", "100", "20")
                                                                .particular(
                                                                        Particular.HELD,
                                                                        "2026-08-01")))
                                .reasons())
                .contains("held since 2026-08-01");
        assertThat(grade(Treating.gb().one(bill("invoice", "100", "20"))).reasons())
                .noneMatch(r -> r.startsWith("held"));
    }

    /** VAT Notice 700 paras 19.6.5 and 19.7.5 (from memory): good for some costs, not for all. */
    @Test
    void documentsThatAreGoodForSomeCosts() {
        SampleLine toll =
                SampleLine.of("expense")
                        .party("Example shop", "GB", "GB101747696")
                        .evidence("none-needed")
                        .rate("20")
                        .gross("6");
        assertThat(grade(Treating.gb().one(toll.category("toll"))).reasons())
                .contains("the whole document comes to 6.00, within the limit of 25.00")
                .noneMatch(r -> r.startsWith("good only"));
        assertThat(grade(Treating.gb().one(toll.category("stationery"))).reasons())
                .contains(
                        "good only for telephone, coin-machine, parking-off-street, toll, not for"
                                + " stationery");
        Treated none = Treating.gb().one(toll.category("").without().gross("25.01"));
        assertThat(grade(none).reasons())
                .contains(
                        "good only for telephone, coin-machine, parking-off-street, toll, not for a"
                                + " cost without a category",
                        "the whole document comes to 25.01, above the limit of 25.00");
        assertThat(grade(Treating.gb().one(toEmployee("travel"))).reasons())
                .contains("made out to an employee, which does for travel");
        assertThat(grade(Treating.gb().one(toEmployee("stock"))).reasons())
                .contains("made out to an employee, which does not do for stock");
    }

    private static SampleLine toEmployee(String category) {
        return bill("invoice", "100", "20")
                .category(category)
                .particular(Particular.ADDRESSED, "employee");
    }

    /** A decision is of the kind of document that was seen, not of another that is stated since. */
    @Test
    void otherProofIsAcceptedByNameAlone() {
        Decision seen = decided("1", Decision.Action.EVIDENCE_SEEN, "invoice");
        Decision stated =
                new Decision(
                        2,
                        Decision.Target.ENTRY,
                        "1",
                        Decision.Action.STATE,
                        "evidence=alternative",
                        "it was a bank line",
                        "Ada Fern",
                        DAY);
        Treated treated = Treating.gb().deciding(seen, stated).one(bill("invoice", "100", "20"));
        assertThat(Treating.told(treated)).endsWith("evidence-alternative");
        assertThat(grade(treated).reasons())
                .contains(
                        "alternative: Other proof of the purchase, such as bank record, order,"
                                + " delivery and onward sale: no claim unless the tax authority"
                                + " accepts it");
    }

    /** What takes from a claim, or is for nothing: reg 29(4) bars a second deduction alone. */
    @ParameterizedTest(name = "{0} and {1} twice: {2}")
    @CsvSource({
        "100, 20, likely-duplicate",
        "0, 0, likely-duplicate",
        "-100, -20, credit-entered-twice"
    })
    void enteredTwice(String net, String vat, String asks) {
        List<Treated> both =
                Treating.gb().all(bill("invoice", net, vat), bill("invoice", net, vat));
        assertThat(both.get(1).queries()).extracting(Query::id).contains("E2/" + asks);
        assertThat(both.get(0).queries()).noneMatch(q -> q.id().endsWith(asks));
    }

    /** Which grades VAT is reclaimed on. */
    @ParameterizedTest
    @CsvSource({"FULL, true", "ENOUGH, true", "IN_QUESTION, false", "NONE, false"})
    void whatSupportsAClaim(Grade grade, boolean supports) {
        assertThat(grade.supports()).isEqualTo(supports);
    }
}
