package quarterfold.law;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What each kind of document must show, on both sides of the days on which that changed. */
class ParticularTest {

    private static final LocalDate TODAY = LocalDate.of(2026, 8, 1);

    private final Law law = Law.of("GB");

    /** Reg 14 as first made, by SI 2003/3220 reg 7, SI 2007/2085 reg 7 and as it stands. */
    @ParameterizedTest(name = "{0} on {1} [{3}]")
    @CsvSource(
            textBlock =
                    """
        invoice,     1995-10-19, '', not yet made
        invoice,     1995-10-20, 'number tax-point issue-date supplier supplier-vat-number customer supply-type description quantity rate net total-net discount-rate vat-by-rate total-vat', reg 14(1) as first made
        invoice,     2003-12-31, 'number tax-point issue-date supplier supplier-vat-number customer supply-type description quantity rate net total-net discount-rate vat-by-rate total-vat', reg 14(1) as first made
        invoice,     2004-01-01, 'number tax-point issue-date supplier supplier-vat-number customer description quantity rate net total-net discount-rate total-vat unit-price', SI 2003/3220 reg 7
        invoice,     2007-09-30, 'number tax-point issue-date supplier supplier-vat-number customer description quantity rate net total-net discount-rate total-vat unit-price', SI 2003/3220 reg 7
        invoice,     2007-10-01, 'number tax-point issue-date supplier supplier-vat-number customer description quantity rate net total-net discount-rate total-vat unit-price margin-scheme reverse-charge', SI 2007/2085 reg 7
        invoice,     2026-08-01, 'number tax-point issue-date supplier supplier-vat-number customer description quantity rate net total-net discount-rate total-vat unit-price margin-scheme reverse-charge', reg 14(1)
        simplified,  2003-12-31, 'supplier supplier-vat-number tax-point description total-gross rate', SI 1992/3102 reg 10
        simplified,  2004-01-01, 'supplier supplier-vat-number tax-point description total-gross rate gross-by-rate', reg 16A
        self-billed, 2003-12-31, '', SI 2003/3220 reg 4
        self-billed, 2004-01-01, 'agreement supplier-taxable number tax-point issue-date supplier supplier-vat-number customer description quantity rate net total-net discount-rate total-vat unit-price', 'reg 13(3A)'
        credit-note, 2019-08-31, '', SI 2019/1048 reg 1
        credit-note, 2019-09-01, 'number issue-date supplier supplier-vat-number customer invoice-number invoice-date description net vat', reg 15C
        postponed-statement, 2020-12-31, '', 'postponed accounting began in 2021'
        postponed-statement, 2021-01-01, 'month importer-vat-number importer-eori total-vat port-vat entry-date entry-number', GOV.UK on the statement
        import-certificate,  2026-08-01, 'importer vat entry-reference accounting-date', 'reg 29(2)(c)'
        none-needed, 2026-08-01, 'spent supplier-registered', VAT Notice 700 para 19.7.5
        """)
    void particulars(String evidence, LocalDate day, String codes, String source) {
        assertThat(law.particulars(evidence, day))
                .as(source)
                .extracting(d -> d.value().code())
                .containsExactlyElementsOf(codes.isEmpty() ? List.of() : List.of(codes.split(" ")));
    }

    /** Reg 14(1)(a): an identifying number, since SI 2007/2085 a sequential one. */
    @Test
    void theWordsOfTheDay() {
        LocalDate changed = LocalDate.of(2007, 10, 1);
        assertThat(law.particulars("invoice", changed.minusDays(1)).get(0).value())
                .isEqualTo(new Particular("invoice", "number", "", "An identifying number"));
        assertThat(law.particulars("invoice", changed).get(0).value().words())
                .isEqualTo(
                        "A sequential number, of one or more series, that identifies the document"
                                + " alone");
        assertThat(law.changes()).contains(changed);
    }

    /** Reg 14(1)(j), (n) and (o): only where there is a discount, a margin scheme or the charge. */
    @Test
    void whatIsOwedInOneCaseOnly() {
        assertThat(law.particulars("invoice", TODAY))
                .extracting(Dated::value)
                .filteredOn(p -> !p.when().isEmpty())
                .extracting(Particular::code, Particular::when)
                .containsExactly(
                        tuple("discount-rate", "discount"),
                        tuple("margin-scheme", "margin-scheme"),
                        tuple("reverse-charge", "reverse-charge"));
    }

    /**
     * Each document that supports a claim or a zero rate says what it must show; in whose name it
     * is made out says nothing of its particulars.
     */
    @Test
    void everyKindOfEvidence() {
        Set<String> kinds = new TreeSet<>();
        for (TableFile file : law.files()) {
            if (file.name().equals("evidence.csv")) {
                file.text().lines().skip(1).forEach(l -> kinds.add(l.substring(0, l.indexOf(','))));
            }
        }
        assertThat(kinds).contains("invoice", "missing", "unstated", "in-employee-name");
        kinds.removeAll(Set.of("missing", "unstated", "in-employee-name"));
        assertThat(kinds).allMatch(k -> !law.particulars(k, TODAY).isEmpty());
        kinds.add("credit-note");
        for (TableFile file : law.files()) {
            if (file.name().equals("evidence-shows.csv")) {
                assertThat(file.text().lines().skip(1).map(l -> l.substring(0, l.indexOf(','))))
                        .isSubsetOf(kinds);
            }
        }
    }

    @Test
    void aKindThereIsNot() {
        assertThat(law.particulars("napkin", TODAY)).isEmpty();
    }
}
