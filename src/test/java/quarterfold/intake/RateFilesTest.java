package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.ledger.Particular;
import quarterfold.ledger.PublishedRate;
import quarterfold.ledger.SetAside;
import quarterfold.money.Amount;

/**
 * Files of exchange rates. The tax authority's forms are those its open code writes
 * (trade-tariff/trade-tariff-backend, create_csv_service.rb, create_csv_hmrc_service.rb) and its
 * XML that of its monthly files; rates of August 2026 from a public copy of them (secondary
 * source). The European Central Bank's form is from memory, its rates made up.
 */
class RateFilesTest {

    private static final String XML =
            """
            <?xml version="1.0" encoding="UTF-8"?>
            <exchangeRateMonthList Period="01/Aug/2026 to 31/Aug/2026">
              <exchangeRate>
                <countryName>Eurozone</countryName>
                <countryCode>EU</countryCode>
                <currencyName>Euro</currencyName>
                <currencyCode>EUR</currencyCode>
                <rateNew>1.1719</rateNew>
              </exchangeRate>
              <exchangeRate>
                <countryName>Kosovo </countryName>
                <countryCode>XK</countryCode>
                <currencyName>Euro</currencyName>
                <currencyCode>EUR</currencyCode>
                <rateNew>1.1719</rateNew>
              </exchangeRate>
              <exchangeRate>
                <countryName>USA</countryName>
                <countryCode>US</countryCode>
                <currencyName>Dollar</currencyName>
                <currencyCode>USD</currencyCode>
                <rateNew>1.3367</rateNew>
              </exchangeRate>
            </exchangeRateMonthList>
            """;

    private static final String BY_CURRENCY =
            """
            Country/Territories,Currency,Currency Code,Currency Units per £1,Start date,End date
            "AT,BE,DE",Euro,EUR,1.1719,01/08/2026,31/08/2026
            US,Dollar,USD,1.3367,01/08/2026,31/08/2026
            """;

    private static final String BY_COUNTRY =
            """
            Period,countryName,countryCode,currencyName,currencyCode,rateNew
            01/Aug/2026 to 31/Aug/2026,Austria,AT,Euro,EUR,1.1719
            01/Aug/2026 to 31/Aug/2026,Belgium,BE,Euro,EUR,1.1719
            01/Aug/2026 to 31/Aug/2026,USA,US,Dollar,USD,1.3367
            """;

    private static final String DAILY =
            """
            <?xml version="1.0" encoding="UTF-8"?>
            <gesmes:Envelope xmlns:gesmes="http://www.gesmes.org/xml/2002-08-01" xmlns="http://www.ecb.int/vocabulary/2002-08-01/eurofxref">
              <gesmes:subject>Reference rates</gesmes:subject>
              <gesmes:Sender><gesmes:name>European Central Bank</gesmes:name></gesmes:Sender>
              <Cube>
                <Cube time='2026-08-14'>
                  <Cube currency='USD' rate='1.1500'/>
                  <Cube currency='GBP' rate='0.86250'/>
                </Cube>
              </Cube>
            </gesmes:Envelope>
            """;

    @TempDir private Path folder;
    private Desk desk;

    @BeforeEach
    void open() {
        desk = new Desk(folder);
    }

    @AfterEach
    void close() {
        desk.close();
    }

    @Test
    void theMonthlyXml() throws IOException {
        ImportResult.Entered entered = (ImportResult.Entered) desk.enter("2026-08.xml", XML);

        assertThat(desk.rates())
                .extracting(PublishedRate::toString)
                .containsExactly(
                        "1.1719 EUR for 1 GBP from 2026-08-01 to 2026-08-31 (row 1)",
                        "1.3367 USD for 1 GBP from 2026-08-01 to 2026-08-31 (row 3)");
        assertThat(entered.layout()).isEqualTo("monthly-rates");
        assertThat(entered.rowsRead()).isEqualTo(3);
        assertThat(desk.setAside(1))
                .containsExactly(new SetAside(1, 2, "the same rate again: EUR as in row 1"));
        assertThat(desk.archive()).containsExactly("2026-08.xml");
        assertThat(desk.entries()).isEmpty();
    }

    @Test
    void bothMonthlyTables() throws IOException {
        desk.enter("by-currency.csv", BY_CURRENCY);
        desk.enter("by-country.csv", BY_COUNTRY);

        assertThat(desk.rates())
                .extracting(PublishedRate::toString)
                .containsExactly(
                        "1.1719 EUR for 1 GBP from 2026-08-01 to 2026-08-31 (row 2)",
                        "1.3367 USD for 1 GBP from 2026-08-01 to 2026-08-31 (row 3)",
                        "1.1719 EUR for 1 GBP from 2026-08-01 to 2026-08-31 (row 2)",
                        "1.3367 USD for 1 GBP from 2026-08-01 to 2026-08-31 (row 4)");
        assertThat(desk.setAside(2))
                .containsExactly(new SetAside(2, 3, "the same rate again: EUR as in row 2"));
    }

    @Test
    void theDailyXml() throws IOException {
        assertThat(desk.enter("day.xml", DAILY).layout()).isEqualTo("daily-rates");

        assertThat(desk.rates())
                .extracting(PublishedRate::toString)
                .containsExactly(
                        "1.1500 USD for 1 EUR from 2026-08-14 to 2026-08-14 (row 1)",
                        "0.86250 GBP for 1 EUR from 2026-08-14 to 2026-08-14 (row 2)");
    }

    @ParameterizedTest
    @CsvSource({"14 August 2026", "2026-08-14"})
    void theDailyTable(String day) throws IOException {
        desk.enter("day.csv", "Date, USD, BGN, GBP, \n" + day + ", 1.1500, N/A, 0.86250, \n");

        assertThat(desk.rates())
                .extracting(PublishedRate::toString)
                .containsExactly(
                        "1.1500 USD for 1 EUR from 2026-08-14 to 2026-08-14 (row 2)",
                        "0.86250 GBP for 1 EUR from 2026-08-14 to 2026-08-14 (row 2)");
        assertThat(desk.enter("again.csv", "Date, USD, BGN, GBP, \n").problems())
                .extracting(Problem::toString)
                .containsExactly(
                        "again.csv: found no exchange rate; expected at least one, such as 1.1719 for EUR");
    }

    @Test
    void theSameFileTwiceChangesNothing() throws IOException {
        desk.enter("2026-08.xml", XML);

        assertThat(desk.enter("copy.xml", XML)).isInstanceOf(ImportResult.AlreadyThere.class);
        assertThat(desk.rates()).hasSize(2);
    }

    @Test
    void aFileThatDisagreesWithOneHeldIsRefused() throws IOException {
        desk.enter("2026-08.xml", XML);

        assertThat(desk.enter("amended.csv", BY_CURRENCY.replace("1.1719", "1.1720")).problems())
                .extracting(Problem::toString)
                .containsExactly(
                        "amended.csv row 2 [EUR]: found 1.1720 EUR for 1 GBP from 2026-08-01 to 2026-08-31 (row 2); expected 1.1719 EUR for 1 GBP from 2026-08-01 to 2026-08-31 (row 1), as 2026-08.xml has it: a publisher has one rate of a day, so find out which file is right");
        assertThat(desk.rates()).hasSize(2);
        assertThat(desk.archive()).containsExactly("2026-08.xml");
    }

    /** One day is enough; the day after is another matter. */
    @ParameterizedTest
    @CsvSource({"31/08/2026, 1", "01/09/2026, 0"})
    void daysThatOverlapMustAgree(String first, int problems) throws IOException {
        desk.enter("2026-08.xml", XML);

        assertThat(
                        desk.enter(
                                        "more.csv",
                                        BY_CURRENCY
                                                .replace("1.1719,01/08/2026", "1.2,01/09/2026")
                                                .replace("1.3367,01/08/2026", "1.3,01/09/2026")
                                                .replaceFirst("01/09/2026", first)
                                                .replace("31/08/2026\n", "30/09/2026\n"))
                                .problems())
                .hasSize(problems);
    }

    @Test
    void rowsOfAMonthThatDisagreeAreRefused() throws IOException {
        assertThat(desk.problems("2026-08.xml", XML.replaceFirst("1.1719", "1.1720")))
                .containsExactly(
                        "2026-08.xml:10 exchangeRate[2] [EUR]: found 1.1719 EUR for 1 GBP from 2026-08-01 to 2026-08-31 (row 2); expected what it says of those days before, 1.1720 EUR for 1 GBP from 2026-08-01 to 2026-08-31 (row 1); ask the publisher which is right");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
                    1.3367 | 0 | 2026-08.xml:17 exchangeRate[3] [rateNew]: found '0'; expected units of the currency for one GBP, above nought, such as 1.1719
                    1.3367 | -1.3367 | 2026-08.xml:17 exchangeRate[3] [rateNew]: found '-1.3367'; expected units of the currency for one GBP, above nought, such as 1.1719
                    1.3367 | 1,3367 | 2026-08.xml:17 exchangeRate[3] [rateNew]: found '1,3367'; expected units of the currency for one GBP, above nought, such as 1.1719
                    1.3367 | '' | 2026-08.xml:17 exchangeRate[3] [rateNew]: found ''; expected units of the currency for one GBP, above nought, such as 1.1719
                    USD | $ | 2026-08.xml:17 exchangeRate[3] [currencyCode]: found '$'; expected a currency code of three letters, such as EUR
                    """)
    void whatIsNoRate(String good, String bad, String problem) throws IOException {
        assertThat(desk.problems("2026-08.xml", XML.replace(">" + good + "<", ">" + bad + "<")))
                .containsExactly(problem);
    }

    @ParameterizedTest
    @CsvSource({
        "01/Aug/2026 to 31/Avg/2026",
        "31/Aug/2026 to 01/Aug/2026",
        "01/Aug/2026 to 32/Aug/2026",
        "01/Aug/2026 to 02/Aug/2027",
        "August 2026"
    })
    void whatIsNoPeriod(String period) throws IOException {
        assertThat(desk.problems("m.xml", XML.replace("01/Aug/2026 to 31/Aug/2026", period)))
                .first()
                .isEqualTo(
                        "m.xml:3 exchangeRate[1] [Period]: found '%s'; expected two days such as 01/Aug/2026 to 31/Aug/2026"
                                .formatted(period));
    }

    @Test
    void aTableRowThatIsNoRate() throws IOException {
        assertThat(desk.problems("m.csv", BY_CURRENCY.replace("31/08/2026\nUS", "31/13/2026\nUS")))
                .containsExactly(
                        "m.csv:2 [Start date]: found '01/08/2026 to 31/13/2026'; expected two days such as 01/08/2026 and 31/08/2026");
    }

    @Test
    void aFileThatBreaksOff() throws IOException {
        assertThat(desk.problems("m.xml", XML.substring(0, XML.length() - 60)))
                .containsExactly(
                        "m.xml:22: found XML that breaks off, breaks the rules of XML, or has a document type; expected the whole file as it was issued, every element closed; get it again");
    }

    /** Entity expansion and external entities: nothing is expanded, nothing outside is read. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
                    <!DOCTYPE x [<!ENTITY r "1.1719">]>
                    <!DOCTYPE x [<!ENTITY r SYSTEM "file:///etc/passwd">]>
                    <!DOCTYPE x SYSTEM "http://localhost/x.dtd">
                    """)
    void aDocumentTypeIsRefused(String type) throws IOException {
        assertThat(
                        desk.problems(
                                "m.xml",
                                XML.replace(
                                                "<exchangeRateMonthList",
                                                type + "<exchangeRateMonthList")
                                        .replace(">1.3367<", ">&r;<")))
                .containsExactly(
                        "m.xml: found a document type (<!DOCTYPE), as web pages have; expected XML without one, or a table, such as the same report downloaded as .csv");
    }

    @Test
    void anEntityIsRefused() throws IOException {
        assertThat(desk.problems("m.xml", XML.replace(">1.3367<", ">&r;<")))
                .containsExactly(
                        "m.xml:22: found XML that breaks off, breaks the rules of XML, or has a document type; expected the whole file as it was issued, every element closed; get it again");
    }

    @Test
    void vatInSterlingIsForDocumentsInAnotherCurrency() throws IOException {
        assertThat(
                        desk.problems(
                                "s.csv",
                                "date,kind,currency,net,vat,sterling_vat\n2026-08-14,expense,GBP,100,20,20\n"))
                .containsExactly(
                        "s.csv:2 [sterling_vat]: found it on a row in GBP; expected it where the amounts are in another currency; here enter the VAT as vat, such as 20.00");
        desk.enter(
                "t.csv",
                "date,kind,currency,net,vat,sterling_vat\n2026-08-14,expense,EUR,100,20,17.07\n");
        assertThat(desk.lines().get(0).particulars().amount(Particular.STERLING_VAT))
                .contains(Amount.of("17.07"));
    }

    @Test
    void anotherFileIsNotTakenForRates() throws IOException {
        assertThat(
                        desk.enter(
                                        desk.file("s.csv", "date,kind,gross\n2026-08-14,sale,1\n"),
                                        "monthly-rates")
                                .problems())
                .extracting(Problem::toString)
                .containsExactly(
                        "s.csv: found no exchange rates of the tax authority; expected its own file, such as XML with the root element exchangeRateMonthList");
    }
}
