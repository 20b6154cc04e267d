package quarterfold.law;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.money.Amount;

/** The shipped tables, looked up on both sides of each day on which they change. */
class LawTest {

    private static final LocalDate TODAY = LocalDate.of(2026, 8, 1);

    private final Law law = Law.of("GB");

    @Test
    void shippedTables() {
        assertThat(law.files())
                .extracting(TableFile::name)
                .containsExactly(
                        "rates.csv",
                        "limits.csv",
                        "areas.csv",
                        "choices.csv",
                        "queries.csv",
                        "treatments.csv",
                        "boxes.csv",
                        "form.csv",
                        "blocked.csv",
                        "evidence.csv",
                        "periods.csv",
                        "flat-rates.csv",
                        "fuel-scale.csv",
                        "evidence-shows.csv",
                        "adjustments.csv",
                        "totals.csv",
                        "counted-categories.csv",
                        "account.csv",
                        "answers.csv",
                        "timing.csv");
        assertThat(law.files()).allSatisfy(f -> assertThat(f.sha256()).matches("[0-9a-f]{64}"));
    }

    /** FIPS 180-4, the digest of the three letters abc. */
    @Test
    void aTableIsKnownByItsDigest() {
        TableFile file = Law.file("a.csv", "abc".getBytes(StandardCharsets.UTF_8));
        assertThat(file)
                .isEqualTo(
                        new TableFile(
                                "a.csv",
                                "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
                                "abc"));
    }

    @Test
    void theSameTextsGiveTheSameLaw() {
        Law again = Law.of(law.files());
        assertThat(again.files()).isEqualTo(law.files());
        assertThat(again.treatments().rows()).isEqualTo(law.treatments().rows());
        assertThat(again.changes()).isEqualTo(law.changes());
    }

    @ParameterizedTest(name = "{0} on {1}: {2} {3} [{4}]")
    @CsvSource(
            textBlock =
                    """
        registration,               2006-03-31, ,      ,       'earlier limits are not in the table'
        registration,               2006-04-01, 61000, pounds, VAT Notice 700/1 supplement
        registration,               2009-04-30, 67000, pounds, VAT Notice 700/1 supplement
        registration,               2009-05-01, 68000, pounds, VAT Notice 700/1 supplement
        registration,               2014-03-31, 79000, pounds, VAT Notice 700/1 supplement
        registration,               2014-04-01, 81000, pounds, published tables of VAT limits
        registration,               2017-03-31, 83000, pounds, published tables of VAT limits
        registration,               2017-04-01, 85000, pounds, SI 2017/290
        registration,               2024-03-31, 85000, pounds, SI 2017/290
        registration,               2024-04-01, 90000, pounds, SI 2024/307
        deregistration,             2024-03-31, 83000, pounds, SI 2017/290
        deregistration,             2024-04-01, 88000, pounds, SI 2024/307
        registration-ni-acquisitions, 2024-04-01, 90000, pounds, SI 2024/307
        simplified-invoice,         2003-12-31, 100,   pounds, SI 1992/3102
        simplified-invoice,         2004-01-01, 250,   pounds, VAT Regulations 1995 reg 16A
        no-invoice,                 2026-08-01, 25,    pounds, VAT Notice 700 para 19.7.5
        consignment,                2020-12-31, ,      ,       VATA 1994 s.5A: from 1 January 2021
        consignment,                2021-01-01, 135,   pounds, VATA 1994 s.5A
        gifts,                      2003-09-30, ,      ,       'Finance Act 2003 s.21(4): gifts made on or after 1 October 2003'
        gifts,                      2003-10-01, 50,    pounds, Finance Act 2003 s.21
        gifts,                      2026-08-01, 50,    pounds, HMRC manual VATSC03322
        stock-at-deregistration,    2000-03-31, ,      ,       SI 2000/266 art 1
        stock-at-deregistration,    2000-04-01, 1000,  pounds, SI 2000/266 art 2
        supplier-unpaid,            2002-12-31, ,      ,       VAT Regulations 1995 reg 172F
        supplier-unpaid,            2003-01-01, 6,     months, VAT Regulations 1995 reg 172G
        bad-debt-limit,             2009-03-31, 42,    months, HMRC manual VR7430
        bad-debt-limit,             2009-04-01, 54,    months, VAT Regulations 1995 reg 165A
        error-correction-floor,     2008-06-30, 2000,  pounds, VAT Regulations 1995 reg 34 as made
        error-correction-floor,     2008-07-01, 10000, pounds, HMRC manual VAEC7190
        error-correction-cap,       2008-06-30, ,      ,       HMRC manual VAEC7190
        error-correction-cap,       2008-07-01, 50000, pounds, HMRC manual VAEC7190
        error-correction-percent,   2008-07-01, 1,     percent, HMRC manual VAEC7190
        error-time-limit,           2009-03-31, 3,     years,  VAT Regulations 1995 reg 34(1A)
        error-time-limit,           2009-04-01, 4,     years,  SI 2009/586; HMRC manual VAEC7410
        claim-cap-years,            2009-03-31, 3,     years,  VAT Regulations 1995 reg 29(1A)
        claim-cap-years,            2009-04-01, 4,     years,  SI 2009/586
        pre-registration-goods,     2009-04-02, 4,     years,  SI 2009/586
        pre-registration-services,  2026-08-01, 6,     months, VAT Regulations 1995 reg 111
        bad-debt-wait,              2026-08-01, 6,     months, HMRC manual VR7420
        refund-document,            2019-08-31, ,      ,       SI 2019/1048
        refund-document,            2019-09-01, 14,    days,   SI 2019/1048
        partial-exemption-month,    2026-08-01, 625,   pounds, VAT Regulations 1995 reg 106
        partial-exemption-percent,  2026-08-01, 50,    percent, VAT Regulations 1995 reg 106
        partial-exemption-simple-month,   2010-03-31, ,    ,        SI 2010/559 reg 1
        partial-exemption-simple-month,   2010-04-01, 625, pounds,  VAT Regulations 1995 reg 105A
        partial-exemption-simple-percent, 2010-03-31, ,    ,        SI 2010/559 reg 1
        partial-exemption-simple-percent, 2010-04-01, 50,  percent, VAT Regulations 1995 reg 105A
        partial-exemption-annual-test,    2010-04-01, 1000000, pounds, 'SI 2010/559, explanatory note on reg 8'
        partial-exemption-whole-percent,  2005-03-31, ,       ,       SI 2005/762 reg 1
        partial-exemption-whole-percent,  2005-04-01, 400000, pounds, SI 2005/762 reg 3
        partial-exemption-override,       2002-04-17, ,       ,       SI 2002/1074
        partial-exemption-override,       2002-04-18, 50000,  pounds, VAT Regulations 1995 reg 107E
        goods-on-approval,          1994-08-31, ,      ,       VATA 1994 s.101
        goods-on-approval,          1994-09-01, 12,    months, 'VATA 1994 s.6(2)(c)'
        invoice-tax-point,          2026-08-01, 14,    days,   VATA 1994 s.6(5)
        invoice-due,                2026-08-01, 30,    days,   VAT Regulations 1995 reg 13(5) (from memory)
        prompt-payment-price-paid,  2015-03-31, 0,     switch, HMRC manual VATVAL08500
        prompt-payment-price-paid,  2015-04-01, 1,     switch, Finance Act 2014 s.108(4)
        retained-payment-taxed,     2019-02-28, 0,     switch, Revenue and Customs Brief 13 (2018)
        retained-payment-taxed,     2019-03-01, 1,     switch, Revenue and Customs Brief 13 (2018)
        voucher-single-or-multi,    2018-12-31, 0,     switch, VATA 1994 s.51B
        voucher-single-or-multi,    2019-01-01, 1,     switch, VATA 1994 s.51C
        domestic-reverse-charge-goods, 2007-05-31, ,   ,       Information Sheet 08/07
        domestic-reverse-charge-goods, 2007-06-01, 5000, pounds, Information Sheet 08/07
        domestic-reverse-charge-construction, 2021-02-28, , ,  professional notes
        domestic-reverse-charge-construction, 2021-03-01, 1, switch, professional notes
        cash-accounting-join,       2007-03-31, ,      ,       SI 2007/768
        cash-accounting-join,       2007-04-01, 1350000, pounds, SI 2007/768 reg 3
        cash-accounting-leave,      2007-04-01, 1600000, pounds, SI 2007/768 reg 4
        cash-accounting-terms,      2026-08-01, 6,     months, VAT Regulations 1995 reg 58(2)(e)
        flat-rate-join,             2003-04-09, ,      ,       SI 2003/1069
        flat-rate-join,             2003-04-10, 150000, pounds, SI 2003/1069 reg 7
        flat-rate-leave,            2011-01-03, 225000, pounds, SI 2003/1069 reg 7
        flat-rate-leave,            2011-01-04, 230000, pounds, SI 2010/2940 reg 5
        flat-rate-stay,             2011-01-03, 187500, pounds, SI 2003/1069 reg 7
        flat-rate-stay,             2011-01-04, 191500, pounds, SI 2010/2940 reg 5
        flat-rate-first-year-discount, 2003-12-31, ,   ,       VAT Regulations 1995 reg 55JB
        flat-rate-first-year-discount, 2004-01-01, 1,  points, VAT Regulations 1995 reg 55JB
        flat-rate-limited-cost,     2017-03-31, ,      ,       SI 2017/295 reg 1
        flat-rate-limited-cost,     2017-04-01, 16.5,  percent, SI 2017/295
        limited-cost-goods-year,    2017-04-01, 1000,  pounds, SI 2017/295 reg 3
        limited-cost-goods-quarter, 2017-04-01, 250,   pounds, hmrc/vat-flat-rate-calculator-frontend
        limited-cost-goods-percent, 2017-04-01, 2,     percent, SI 2017/295 reg 3
        flat-rate-capital-goods,    2026-08-01, 2000,  pounds, VAT Regulations 1995 reg 55E
        fuel-scale-small-engine,    2026-08-01, 1400,  cubic-centimetres, 'GOV.UK, road fuel scale charges'
        fuel-scale-small-engine-co2, 2026-08-01, 140,  grams-per-kilometre, 'GOV.UK, road fuel scale charges'
        fuel-scale-middle-engine,   2026-08-01, 2000,  cubic-centimetres, 'GOV.UK, road fuel scale charges'
        fuel-scale-middle-engine-co2, 2026-08-01, 175, grams-per-kilometre, 'GOV.UK, road fuel scale charges'
        fuel-scale-large-engine-co2, 2026-08-01, 225,  grams-per-kilometre, SI 2011/898 art 2(3)
        """)
    void limits(
            String name,
            LocalDate day,
            @Nullable String amount,
            @Nullable String unit,
            String source) {
        Optional<Law.Limit> expected =
                amount == null || unit == null
                        ? Optional.empty()
                        : Optional.of(new Law.Limit(Amount.of(amount), unit));
        assertThat(law.limit(name, day).map(Dated::value)).as(source).isEqualTo(expected);
    }

    @Test
    void aNameThatIsNoLimit() {
        assertThat(law.limit("speed", TODAY)).isEmpty();
    }

    @ParameterizedTest(name = "{0} on {1}: {2} [{3}]")
    @CsvSource(
            textBlock =
                    """
        GB, 2026-08-01, gb,        the United Kingdom
        IM, 2026-08-01, gb,        Isle of Man Act 1979 s.6
        XI, 2020-12-31, gb,        'VATA 1994 s.96(11): until the end of 2020 no different from the rest'
        XI, 2021-01-01, ni,        VATA 1994 Sch 9ZA and 9ZB
        DE, 1992-12-31, elsewhere, dated from the single market in goods
        DE, 1993-01-01, eu,        VAT Directive 2006/112/EC art 5
        AT, 1994-12-31, elsewhere, Treaty of Accession 1994
        AT, 1995-01-01, eu,        Treaty of Accession 1994
        PL, 2004-04-30, elsewhere, Treaty of Accession 2003
        PL, 2004-05-01, eu,        Treaty of Accession 2003
        RO, 2006-12-31, elsewhere, Treaty of Accession 2005
        RO, 2007-01-01, eu,        Treaty of Accession 2005
        HR, 2013-06-30, elsewhere, Treaty of Accession 2011
        HR, 2013-07-01, eu,        Treaty of Accession 2011
        MC, 2026-08-01, eu,        VAT Directive 2006/112/EC art 7
        NO, 2026-08-01, elsewhere, no member
        JE, 2026-08-01, elsewhere, 'Jersey is outside the VAT area'
        ZZ, 2026-08-01, elsewhere, no country
        """)
    void areas(String country, LocalDate day, String area, String source) {
        assertThat(law.area(country, day)).as(source).isEqualTo(area);
    }

    /** The 27 members, by the Treaties of Accession. */
    @Test
    void everyMemberState() {
        List<String> members =
                List.of(
                        "AT BE BG HR CY CZ DK EE FI FR DE GR HU IE IT LV LT LU MT NL PL PT RO SK SI ES SE"
                                .split(" "));
        assertThat(members).hasSize(27).allMatch(m -> law.area(m, TODAY).equals("eu"));
    }

    @ParameterizedTest(name = "{0} on {1} up to {2}: {3}")
    @CsvSource(
            textBlock =
                    """
        invoice,             2026-08-01, ,    yes
        simplified,          2003-12-31, 100, yes
        simplified,          2004-01-01, 250, yes
        none-needed,         2026-08-01, 25,  yes
        import-certificate,  2026-08-01, ,    yes
        postponed-statement, 2021-01-01, ,    yes
        self-billed,         2026-08-01, ,    yes
        export,              2026-08-01, ,    no
        missing,             2026-08-01, ,    no
        unstated,            2026-08-01, ,    no
        """)
    void evidence(String code, LocalDate day, @Nullable String upTo, String claims) {
        EvidenceRule rule = law.evidence(code, day).orElseThrow().value();
        assertThat(rule.claims()).isEqualTo(claims.equals("yes"));
        assertThat(rule.upTo()).isEqualTo(Optional.ofNullable(upTo).map(Amount::of));
        assertThat(rule.onlyCategories())
                .isEqualTo(
                        code.equals("none-needed")
                                ? List.of("telephone", "coin-machine", "parking-off-street", "toll")
                                : List.of());
    }

    @Test
    void postponedAccountingBeganIn2021() {
        assertThat(law.evidence("postponed-statement", LocalDate.of(2020, 12, 31))).isEmpty();
    }

    @ParameterizedTest(name = "{0}: {1}% blocked [{2}]")
    @CsvSource(
            textBlock =
                    """
        client-entertaining,         100, VAT (Input Tax) Order 1992 art 5; VIT43300
        staff-entertaining,          0,   VIT43600
        directors-entertaining,      100, VIT43600
        car-purchase,                100, VIT52100
        car-purchase-stock-in-trade, 0,   VIT52100
        car-hire,                    50,  VATGPB4740; VIT50000
        car-hire-short,              0,   VATGPB4740: ten days or fewer for one trip
        stock,                       0,   VATA 1994 ss.24 to 26
        """)
    void blocked(String category, String percent, String source) {
        assertThat(law.blocked(category, TODAY).orElseThrow().value().blocked())
                .as(source)
                .hasToString(percent);
    }

    @Test
    void aCategoryThatIsInNoTable() {
        assertThat(law.blocked("helicopter", TODAY)).isEmpty();
        assertThat(law.blocked("client-entertaining", LocalDate.of(1992, 12, 31))).isEmpty();
    }

    /** Boxes 2, 8 and 9 speak of Northern Ireland since 2021; VAT100 has nine boxes on any day. */
    @Test
    void formOfTheDay() {
        assertThat(law.form(LocalDate.of(2020, 12, 31)))
                .extracting(Box::id)
                .containsExactly("1", "2", "3", "4", "5", "6", "7", "8", "9");
        assertThat(law.form(LocalDate.of(2020, 12, 31)).get(1).label())
                .isEqualTo("VAT due on goods acquired from other EU member states");
        assertThat(law.form(LocalDate.of(2021, 1, 1)))
                .extracting(Box::id)
                .containsExactly("1", "2", "3", "4", "5", "6", "7", "8", "9");
        assertThat(law.form(LocalDate.of(2021, 1, 1)).get(1).label())
                .isEqualTo("VAT due on goods acquired in Northern Ireland from EU member states");
        assertThat(law.form(LocalDate.of(1992, 12, 31))).isEmpty();
    }

    /** Published API schema VATReturnDeclaration: field names; boxes 6 to 9 in whole pounds. */
    @ParameterizedTest(name = "box {0} is {1}, {2}")
    @CsvSource(
            textBlock =
                    """
        1, vatDueSales,                  PENCE,  ENTRIES,
        2, vatDueAcquisitions,           PENCE,  ENTRIES,
        3, totalVatDue,                  PENCE,  SUM, 1 2
        4, vatReclaimedCurrPeriod,       PENCE,  ENTRIES,
        5, netVatDue,                    PENCE,  GAP, 3 4
        6, totalValueSalesExVAT,         POUNDS, ENTRIES,
        7, totalValuePurchasesExVAT,     POUNDS, ENTRIES,
        8, totalValueGoodsSuppliedExVAT, POUNDS, ENTRIES,
        9, totalAcquisitionsExVAT,       POUNDS, ENTRIES,
        """)
    void boxesOfTheForm(
            String id,
            String exportName,
            Box.Unit unit,
            Box.Operation operation,
            @Nullable String operands) {
        Box box = law.form(TODAY).stream().filter(b -> b.id().equals(id)).findFirst().orElseThrow();
        assertThat(box.exportName()).isEqualTo(exportName);
        assertThat(box.unit()).isEqualTo(unit);
        assertThat(box.formula())
                .isEqualTo(
                        new Box.Formula(
                                operation,
                                operands == null ? List.of() : List.of(operands.split(" "))));
        assertThat(box.isComputed()).isEqualTo(operands != null);
        assertThat(box.text(Amount.of("24800")))
                .isEqualTo(unit == Box.Unit.POUNDS ? "24800" : "24800.00");
        assertThat(box.text(Amount.of("-3"))).isEqualTo(unit == Box.Unit.POUNDS ? "-3" : "-3.00");
    }

    @Test
    void aFigureNotRoundedIsNotWritten() {
        Box box = law.form(TODAY).get(0);
        assertThatThrownBy(() -> box.text(Amount.of("1.005")))
                .isInstanceOf(ArithmeticException.class);
        Box pounds = law.form(TODAY).get(5);
        assertThatThrownBy(() -> pounds.text(Amount.of("1.5")))
                .isInstanceOf(ArithmeticException.class);
    }

    @Test
    void whatATreatmentAddsToTheBoxes() {
        assertThat(law.boxes("reverse-charge", "standard", TODAY))
                .extracting(Dated::value)
                .containsExactly(
                        new BoxRule(
                                "reverse-charge", "1", Measure.VAT, 1, Set.of(), "reverse-charge"),
                        new BoxRule(
                                "reverse-charge",
                                "4",
                                Measure.CLAIM,
                                1,
                                Set.of(),
                                "reverse-charge"),
                        new BoxRule("reverse-charge", "6", Measure.NET, 1, Set.of(), ""),
                        new BoxRule("reverse-charge", "7", Measure.NET, 1, Set.of(), ""));
        assertThat(law.boxes("uk-sale-reduced", "standard", TODAY))
                .extracting(Dated::value)
                .containsExactly(
                        new BoxRule(
                                "uk-sale-reduced",
                                "1",
                                Measure.VAT,
                                -1,
                                Set.of("standard", "cash"),
                                "output-tax"),
                        new BoxRule(
                                "uk-sale-reduced",
                                "6",
                                Measure.NET,
                                -1,
                                Set.of("standard", "cash"),
                                ""));
        assertThat(law.boxes("uk-sale-reduced", "flat-rate", TODAY))
                .extracting(Dated::value)
                .containsExactly(
                        new BoxRule(
                                "uk-sale-reduced",
                                "flat-rate-turnover",
                                Measure.GROSS,
                                -1,
                                Set.of("flat-rate"),
                                ""));
        assertThat(law.boxes("money-only", "standard", TODAY)).isEmpty();
        assertThat(law.boxes("import-postponed", "standard", LocalDate.of(2020, 12, 31))).isEmpty();
        assertThat(law.boxes("import-postponed", "standard", LocalDate.of(2021, 1, 1))).hasSize(3);
    }

    /** VAT Regulations 1995 reg 55A(4): goods alone are relevant goods, by what they are for. */
    @ParameterizedTest(name = "{0} on {1}: {2}")
    @CsvSource({
        "stock, 2017-04-01, true",
        "packaging, 2017-04-01, true",
        "advertising, 2017-04-01, false",
        "'', 2017-04-01, false",
        "stock, 2002-04-24, false"
    })
    void aTotalTakesTheCategoriesItCounts(String category, LocalDate day, boolean counted) {
        assertThat(
                        law.boxes("flat-rate-purchase", "flat-rate", category, day).stream()
                                .map(r -> r.value().box()))
                .isEqualTo(counted ? List.of("relevant-goods") : List.of());
        assertThat(law.counts("relevant-goods", category, day)).isEqualTo(counted);
    }

    @Test
    void periodRules() {
        assertThat(law.periodRule("stagger-1", TODAY).value()).isEqualTo("3 6 9 12");
        assertThat(law.periodRule("stagger-2", TODAY).value()).isEqualTo("1 4 7 10");
        assertThat(law.periodRule("stagger-3", TODAY).value()).isEqualTo("2 5 8 11");
        assertThat(law.periodRule("due-extra-days", LocalDate.of(2000, 3, 1)).value())
                .isEqualTo("7");
        assertThat(law.periodRule("due-extra-days", LocalDate.of(2000, 2, 29)).value())
                .isEqualTo("0");
        assertThatThrownBy(() -> law.periodRule("due-extra-days", LocalDate.of(1973, 3, 31)))
                .isInstanceOf(LawException.class)
                .hasMessage("periods.csv: has no 'due-extra-days' on 1973-03-31");
    }

    @Test
    void aQueryThereIsNot() {
        assertThatThrownBy(() -> law.query("no-such-query"))
                .isInstanceOf(LawException.class)
                .hasMessage("queries.csv: has no 'no-such-query'");
    }

    /** Between two changes everything decided by day is constant. */
    @Test
    void daysOfChange() {
        assertThat(law.changes())
                .contains(
                        LocalDate.of(2011, 1, 4), // rates.csv
                        LocalDate.of(2022, 4, 1), // rates.csv, the day after the last of a row
                        LocalDate.of(2024, 4, 1), // limits.csv
                        LocalDate.of(2013, 7, 1), // areas.csv
                        LocalDate.of(1995, 8, 1), // blocked.csv
                        LocalDate.of(1990, 10, 1), // evidence.csv
                        LocalDate.of(2021, 1, 1)) // treatments.csv and boxes.csv
                .doesNotContain(
                        LocalDate.of(2011, 1, 3),
                        LocalDate.of(2022, 3, 31),
                        LocalDate.of(2026, 8, 1),
                        LocalDate.MAX);
        assertThat(
                        Tables.withFirstRow("boxes.csv", "uk-sale,9,net,plus,,,2030-01-01,,a text")
                                .changes())
                .contains(LocalDate.of(2030, 1, 1));
        assertThat(
                        Tables.with(
                                        "treatments.csv",
                                        t -> t.replaceFirst("1973-04-01,", "2031-01-01,"))
                                .changes())
                .contains(LocalDate.of(2031, 1, 1));
    }

    @Test
    void aCountryWithoutTables() {
        assertThatThrownBy(() -> Law.of("FR"))
                .isInstanceOf(LawException.class)
                .hasMessage("there are no tables for the country FR: rates.csv is missing");
    }

    /** A close froze the tables of its day; a table added since has no rows in them. */
    @Test
    void aLawFrozenBeforeATableWasAdded() {
        List<String> added =
                List.of("flat-rates.csv", "fuel-scale.csv", "evidence-shows.csv", "timing.csv");
        Law frozen = Law.of(law.files().stream().filter(f -> !added.contains(f.name())).toList());
        assertThat(frozen.files()).hasSize(law.files().size() - 4);
        assertThat(frozen.flatRates(TODAY)).isEmpty();
        assertThat(frozen.flatRate("044", TODAY)).isEmpty();
        assertThat(frozen.fuelScale(140, TODAY)).isEmpty();
        assertThat(frozen.particulars("invoice", TODAY)).isEmpty();
        assertThat(frozen.isUnder(TimeRule.BAD_DEBT, "uk-sale", TODAY)).isFalse();
        assertThat(frozen.treatments().rows()).isEqualTo(law.treatments().rows());
    }

    @Test
    void aLawWithoutATable() {
        List<TableFile> files =
                law.files().stream().filter(f -> !f.name().equals("form.csv")).toList();
        assertThatThrownBy(() -> Law.of(files))
                .isInstanceOf(LawException.class)
                .hasMessage("the law has no table form.csv");
    }
}
