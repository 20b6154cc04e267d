package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A layout learned again from a month that has columns an earlier one lacked, or lacks some. */
class LearnedAgainTest {
    private static final String USUAL =
            "the file states no currency: amounts are taken to be in the book's, GBP; if they are not, add to the layout, such as currency: EUR";
    private static final String PLAIN =
            "Date,Order,Type,Amount\n2026-07-03,A-1,Sale,10.00\n2026-07-30,A-2,Fee,-2.00\n";
    private static final String WITH_FEE =
            "Date,Order,Type,Amount,Commission\n2026-08-03,B-1,Sale,11.00,-1.50\n2026-08-04,B-2,Sale,12.00,-1.00\n";
    private static final String NET =
            "Date,Order,Gross,Commission,Net\n2026-07-03,A-1,10.00,1.50,8.50\n2026-07-04,A-2,20.00,3.00,17.00\n2026-07-05,A-3,30.00,4.00,26.00\n";
    private static final String ADVERTS =
            "Date,Order,Gross,Commission,Advertising fee,Net\n2026-08-03,B-1,10.00,1.50,0.50,8.00\n2026-08-04,B-2,20.00,3.00,0.00,17.00\n2026-08-05,B-3,30.00,4.00,1.00,25.00\n";
    private static final String APART =
            "to read both, learn each with a name of its own, such as --name report-2";

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

    private Learned learn(String text, Optional<String> before, Map<String, String> answers)
            throws IOException {
        Path file = desk.file("report.csv", text);
        Learned learned = new Learner(Desk.settings()).learn(file, "report", answers, before);
        assertThat(learned.isProved()).as(learned.toString()).isTrue();
        desk.layout("report", learned.yaml().orElseThrow());
        return learned;
    }

    /** What is told beside the currency, of the second report learned over the first. */
    private List<String> again(String first, String second, String... answers) throws IOException {
        Map<String, String> given = new HashMap<>();
        for (String answer : answers) {
            int at = answer.indexOf('=');
            given.put(answer.substring(0, at), answer.substring(at + 1));
        }
        String before = learn(first, Optional.empty(), given).yaml().orElseThrow();
        return over(before, second, given);
    }

    private List<String> over(String before, String second, Map<String, String> answers)
            throws IOException {
        Learned learned = learn(second, Optional.of(before), answers);
        return learned.notes().stream().filter(note -> !note.equals(USUAL)).toList();
    }

    private String yaml() throws IOException {
        return Files.readString(folder.resolve("book/layouts/report.yaml"));
    }

    /** The money of a file's entries, by kind, with the layout as it is now. */
    private List<String> money(String name, String text) throws IOException {
        int before = desk.lines().size();
        assertThat(desk.enter(name, text).problems()).isEmpty();
        return desk.lines().stream()
                .skip(before)
                .map(l -> l.profile().kind().code() + " " + l.signedMoney())
                .toList();
    }

    private List<String> problems(String name, String text) throws IOException {
        return desk.enter(name, text).problems().stream().map(Problem::toString).toList();
    }

    @Test
    void aColumnOfFeesThatCameIsOptional() throws IOException {
        assertThat(again(PLAIN, WITH_FEE, "sum=sum"))
                .containsExactly(
                        "'Commission' is new: a file without it is read too",
                        "kept from the layout as it was: - when: {Type: Fee} enter: - {kind: fee, gross: Amount, set: {category: channel-fee}}");
        assertThat(yaml()).contains("\noptional: [Commission]\n");

        assertThat(money("july.csv", PLAIN)).containsExactly("sale 10.00", "fee -2.00");
        assertThat(money("august.csv", WITH_FEE))
                .containsExactly("sale 11.00", "fee -1.50", "sale 12.00", "fee -1.00");
    }

    @Test
    void aColumnOfFeesThatWentIsOptional() throws IOException {
        assertThat(again(WITH_FEE, PLAIN, "sum=sum"))
                .containsExactly(
                        "'Commission' is not in this report: a file with it is read too, as before");

        assertThat(money("july.csv", PLAIN)).containsExactly("sale 10.00", "fee -2.00");
        assertThat(money("august.csv", WITH_FEE))
                .containsExactly("sale 11.00", "fee -1.50", "sale 12.00", "fee -1.00");
    }

    /** Under another name it is money that nothing is read from, however it is written. */
    @ParameterizedTest
    @ValueSource(strings = {"-1.50", "2", "(1.25)"})
    void moneyUnderANewNameIsRefusedWhereAColumnMayBeMissing(String amount) throws IOException {
        again(PLAIN, WITH_FEE, "sum=sum");

        assertThat(
                        problems(
                                "september.csv",
                                "Date,Order,Type,Amount,Stallage\n2026-09-03,C-1,Sale,11.00,%s\n"
                                        .formatted(amount)))
                .containsExactly(
                        "september.csv:2 [Stallage]: found '%s'; expected no amount, for layout report reads nothing from that column; if it is money, learn the report again with --name report --accept; if it is of no account, make the layout's line: unread: [Stallage]"
                                .formatted(amount));
    }

    /** A sum that holds with the column holds without it. */
    @Test
    void aColumnOfASumThatHolds() throws IOException {
        for (boolean turned : List.of(false, true)) {
            assertThat(turned ? again(ADVERTS, NET) : again(NET, ADVERTS))
                    .containsExactly(
                            turned
                                    ? "'Advertising fee' is not in this report: a file with it is read too, as before"
                                    : "'Advertising fee' is new: a file without it is read too");
            assertThat(yaml())
                    .contains(
                            "  - {sum: [Gross, Commission, Advertising fee], equals: Net}\n",
                            "\noptional: [Advertising fee]\n");
        }
        assertThat(money("july.csv", NET))
                .containsExactly(
                        "sale 10.00",
                        "fee -1.50",
                        "sale 20.00",
                        "fee -3.00",
                        "sale 30.00",
                        "fee -4.00");
        assertThat(money("august.csv", ADVERTS))
                .containsExactly(
                        "sale 10.00",
                        "fee -1.50",
                        "fee -0.50",
                        "sale 20.00",
                        "fee -3.00",
                        "sale 30.00",
                        "fee -4.00",
                        "fee -1.00");
        assertThat(
                        problems(
                                "september.csv",
                                "Date,Order,Gross,Commission,Net\n2026-09-03,B-1,10.00,1.50,8.00\n"))
                .containsExactly(
                        "september.csv:2 [Net]: found '8.00'; expected Gross 10.00 + Commission -1.50 + Advertising fee 0.00 = 8.50");
    }

    /** Without the column that a sum comes to, the sum is not held; with it, it is. */
    @Test
    void aColumnThatSumsComeTo() throws IOException {
        String without =
                "Date,Order,Gross,Commission\n2026-08-03,B-1,10.00,1.50\n2026-08-04,B-2,20.00,3.00\n";
        assertThat(again(NET, without, "sum=sum"))
                .containsExactly(
                        "'Net' is not in this report: a file with it is read too, as before");

        assertThat(money("august.csv", without))
                .containsExactly("sale 10.00", "fee -1.50", "sale 20.00", "fee -3.00");
        assertThat(problems("july.csv", NET.replace("17.00", "17.50")))
                .containsExactly(
                        "july.csv:3 [Net]: found '17.50'; expected Gross 20.00 + Commission -3.00 = 17.00");
    }

    @Test
    void anotherNameForMoneyIsNotTakenForMoreMoney() throws IOException {
        String renamed = WITH_FEE.replace("Commission", "Service fee");
        String why =
                ", and money of its kind came or went with another, which may be the same under another name: a file ";
        assertThat(again(WITH_FEE, renamed, "sum=sum"))
                .containsExactly(
                        "'Service fee' is new"
                                + why
                                + "without it is refused from now on; "
                                + APART,
                        "'Commission' is not in this report"
                                + why
                                + "with it is refused from now on; "
                                + APART);

        assertThat(problems("august.csv", WITH_FEE))
                .containsExactly(
                        "august.csv:1: found the header 'Date, Order, Type, Amount, Commission', which no layout fits; expected, for layout report, also 'Service fee'; where the report has it no more, learn it again, which tells whether both are read then: quarterfold learn FILE --name report --accept");
        assertThat(
                        problems(
                                "both.csv",
                                "Date,Order,Type,Amount,Commission,Service fee\n2026-09-03,C-1,Sale,11.00,-1.50,-1.50\n"))
                .containsExactly(
                        "both.csv:2 [Commission]: found '-1.50'; expected nothing, for layout report reads reports without that column; learn this one with a name of its own, such as --name report-2; if the column is of no account, take it away under expect and optional");
    }

    @Test
    void anotherNameForAllTheMoneyAndForAnOrder() throws IOException {
        assertThat(again(PLAIN, PLAIN.replace("Amount", "Total").replace("Order", "Order number")))
                .containsExactly(
                        "'Order number' is new, and another column was read as the same: a file without it is refused from now on; "
                                + APART,
                        "'Total' is new, and it is what a row comes to: a file without it is refused from now on; "
                                + APART,
                        "'Amount' is not in this report, and it is what a row comes to: a file with it is refused from now on; "
                                + APART);
    }

    /** Rows that the layout told apart by a column are not read all alike where it comes back. */
    @Test
    void aColumnThatTellsRowsApartWent() throws IOException {
        String without = "Date,Order,Amount\n2026-08-03,B-1,10.00\n2026-08-04,B-2,12.00\n";
        assertThat(again(PLAIN, without, "rows=sale"))
                .containsExactly(
                        "'Type' is not in this report, and rows are told apart by it: a file with it is refused from now on; "
                                + APART);

        assertThat(problems("july.csv", PLAIN))
                .containsExactly(
                        "july.csv:2 [Type]: found 'Sale'; expected nothing, for layout report reads reports without that column; learn this one with a name of its own, such as --name report-2; if the column is of no account, take it away under expect and optional");
        assertThat(money("august.csv", without)).containsExactly("sale 10.00", "sale 12.00");
        String untold = yaml().replaceAll("(?m)^(expect|optional): .*$", "");
        assertThat(LayoutReader.read("report.yaml", untold, new Problems()).columns())
                .containsExactlyInAnyOrder("Date", "Order", "Amount");
        desk.layout(
                "report-2",
                new Learner(Desk.settings())
                        .learn(desk.file("july.csv", PLAIN), "report-2", Map.of())
                        .yaml()
                        .orElseThrow());
        assertThat(money("july.csv", PLAIN)).containsExactly("sale 10.00", "fee -2.00");
    }

    @Test
    void aColumnThatTellsRowsApartCame() throws IOException {
        String without = "Date,Order,Amount\n2026-08-03,B-1,10.00\n2026-08-04,B-2,12.00\n";
        assertThat(again(without, PLAIN, "rows=sale"))
                .contains(
                        "'Type' is new, and rows are told apart by it: a file without it is refused from now on; "
                                + APART);

        assertThat(problems("august.csv", without))
                .containsExactly(
                        "august.csv:1: found the header 'Date, Order, Amount', which no layout fits; expected, for layout report, also 'Type'; where the report has it no more, learn it again, which tells whether both are read then: quarterfold learn FILE --name report --accept");
    }

    @Test
    void unitsOfAPriceWent() throws IOException {
        String units =
                "Date,Order,Type,Units,Price\n2026-07-03,A-1,Sale,2,10.00\n2026-07-04,A-2,Sale,3,5.00\n";
        String without =
                "Date,Order,Type,Price\n2026-08-03,B-1,Sale,10.00\n2026-08-04,B-2,Sale,5.00\n";
        assertThat(again(units, without, "price=one"))
                .containsExactly(
                        "'Units' is not in this report, and what a row comes to is worked out with it: a file with it is refused from now on; "
                                + APART);

        assertThat(problems("july.csv", units))
                .containsExactly(
                        "july.csv:2 [Units]: found '2'; expected nothing, for layout report reads reports without that column; learn this one with a name of its own, such as --name report-2; if the column is of no account, take it away under expect and optional");
    }

    @Test
    void columnsOfTextAndOfStates() throws IOException {
        String with =
                "date,ORDER,Type,Amount,Status,Item,Weight\n2026-08-03,B-1,Sale,11.00,Sent,Bowl,1.25\n2026-08-04,B-2,Sale,12.00,Done,Cup,0.30\n";
        assertThat(again(PLAIN, with))
                .containsExactly(
                        "'Weight' is new, and nothing is read from it (unread)",
                        "'Item', 'Status' are new: a file without one of them is read too",
                        "kept from the layout as it was: - when: {Type: Fee} enter: - {kind: fee, gross: Amount, set: {category: channel-fee}}");
        assertThat(money("july.csv", PLAIN)).containsExactly("sale 10.00", "fee -2.00");
        assertThat(money("august.csv", with)).containsExactly("sale 11.00", "sale 12.00");
        assertThat(problems("september.csv", with.replace("Done", "Cancelled")))
                .containsExactly(
                        "september.csv:3 [Status]: found 'Cancelled'; expected a text that layout report knows there, such as 'Sent'; where such rows count as the others do, make the layout's line: expect: {Status: [Sent, Done, Cancelled]}; where they do not count, add to the layout: other_rows: [{when: {Status: Cancelled}, why: of no account}]");

        assertThat(over(yaml(), with.replace("Done", "Shipped").replace("Sent", "Done"), Map.of()))
                .contains(
                        "'Status' says 'Shipped' too, where the layout knew 'Sent': such rows count as the others do; where they do not, add to the layout: other_rows: [{when: {Status: Shipped}, why: of no account}]");
        assertThat(yaml()).contains("\nexpect: {Status: [Sent, Done, Shipped]}\n");

        assertThat(over(yaml(), PLAIN, Map.of()))
                .containsExactly(
                        "'Item', 'Status' are not in this report: a file with one of them is read too, as before");
        assertThat(yaml())
                .contains(
                        "\nunread: [Status, Weight]\n",
                        "\nexpect: {Status: [Sent, Done, Shipped]}\n",
                        "\noptional: [Item, Status]\n");
    }

    @Test
    void whatAPersonWroteStays() throws IOException {
        String text =
                "Date,Order,Type,Amount,Thing,Score\n2026-07-03,A-1,Sale,10.00,Bowl,7\n2026-07-04,A-2,Sale,9.00,Cup,8\n";
        String hand =
                learn(text, Optional.empty(), Map.of())
                        .yaml()
                        .orElseThrow()
                        .replace(
                                "  order: Order\n",
                                "  order: Order\n  product: Thing\n  description: Remark\n")
                        .replace("unread: []", "unread: [Heft]\noptional: [Remark]");
        assertThat(over(hand, text, Map.of()))
                .containsExactly(
                        "kept from the layout as it was: fields: product: Thing",
                        "'Remark' is not in this report: a file with it is read too, as before");
        assertThat(yaml())
                .contains(
                        "\n  product: Thing\n",
                        "\n  description: Remark\n",
                        "\nunread: [Heft]\n",
                        "\noptional: [Remark]\n");
    }

    /** Rows that a person said do not count are not sales where the report is learned again. */
    @Test
    void rowsThatDoNotCount() throws IOException {
        String names = "Date,Order,Type,Amount,Status\n";
        String sent = names + "2026-07-03,A-1,Sale,10.00,Sent\n2026-07-04,A-2,Sale,9.00,Sent\n";
        String parked = sent.replace("9.00,Sent", "9.00,Parked");
        String line = "{when: {Status: Parked}, why: \"of no account\"}";
        String hand =
                learn(sent, Optional.empty(), Map.of()).yaml().orElseThrow()
                        + "other_rows: ["
                        + line.replace("\"", "")
                        + "]\n";

        assertThat(over(hand, parked, Map.of()))
                .containsExactly("kept from the layout as it was: other_rows: [" + line + "]");
        assertThat(over(yaml(), PLAIN, Map.of()))
                .containsExactly(
                        "'Status' is not in this report: a file with it is read too, as before");
        assertThat(yaml()).contains("\nother_rows:\n  - " + line + "\n");
        assertThat(money("july.csv", parked)).containsExactly("sale 10.00");
    }

    /** What a person answers now holds, whatever the layout says. */
    @Test
    void rowsThatCountAfterAll() throws IOException {
        String cancelled =
                "Date,Order,Type,Amount,Status\n2026-07-03,A-1,Sale,10.00,Sent\n2026-07-04,A-2,Sale,9.00,Cancelled\n";
        String before =
                learn(cancelled, Optional.empty(), Map.of("void/Status", "no"))
                        .yaml()
                        .orElseThrow();

        assertThat(over(before, cancelled, Map.of("void/Status", "yes"))).isEmpty();
        assertThat(money("july.csv", cancelled)).containsExactly("sale 10.00", "sale 9.00");
    }

    /** A question that the layout answers is not asked again. */
    @Test
    void whatTheLayoutAnswers() throws IOException {
        String july =
                "Date;Paid;Order;Amount\n01/07/2026;02/07/2026;A-1;10,00\n31/07/2026;31/07/2026;A-2;9,50\n";
        String august =
                "Date;Paid;Order;Amount\n01/08/2026;03/08/2026;B-1;10,00\n02/08/2026;04/08/2026;B-2;9,50\n";
        assertThat(again(july, august, "rows=sale"))
                .containsExactly("answered by the layout as it was: dates=dd/MM/yyyy");

        assertThat(over(yaml(), august, Map.of()))
                .containsExactly(
                        "answered by the layout as it was: dates=dd/MM/yyyy",
                        "answered by the layout as it was: rows=sale");
        assertThat(money("august.csv", august)).containsExactly("sale 10.00", "sale 9.50");
        assertThat(desk.lines().get(0).taxPoint()).hasToString("2026-08-01");
    }

    /** A file without the column that may be missing is in the currency it was in before. */
    @Test
    void aCurrencyThatMayBeMissing() throws IOException {
        String euros =
                "Date,Order,Type,Amount,Currency\n2026-08-03,B-1,Sale,11.00,EUR\n2026-08-04,B-2,Sale,12.00,EUR\n";
        assertThat(again(PLAIN, euros))
                .contains("'Currency' is new: a file without it is read too");
        assertThat(money("july.csv", PLAIN)).containsExactly("sale 10.00", "fee -2.00");
        assertThat(money("august.csv", euros)).containsExactly("sale 11.00", "sale 12.00");
        assertThat(desk.lines().stream().map(l -> l.profile().currency()))
                .containsExactly("GBP", "GBP", "EUR", "EUR");

        Learned without = learn(PLAIN, Optional.of(yaml()), Map.of());
        assertThat(without.notes())
                .containsExactly(
                        USUAL,
                        "'Currency' is not in this report: a file with it is read too, as before");
    }

    /** Learned once more from the same file, a layout says the same. */
    @Test
    void learnedOnceMoreItIsTheSame() throws IOException {
        again(WITH_FEE, PLAIN, "sum=sum");
        String yaml = yaml();
        assertThat(over(yaml, PLAIN, Map.of()))
                .containsExactly(
                        "'Commission' is not in this report: a file with it is read too, as before");
        assertThat(yaml()).isEqualTo(yaml);

        String ambiguous = "Date;Order;Amount\n01/08/2026;B-1;10,00\n02/08/2026;B-2;9,50\n";
        Map<String, String> answers = Map.of("rows", "sale", "dates", "dd/MM/yyyy");
        String asked = learn(ambiguous, Optional.empty(), answers).yaml().orElseThrow();
        over(asked, ambiguous, Map.of());
        assertThat(yaml()).isEqualTo(asked);
    }

    /** Money that a layout does not look for elsewhere must be where the layout says. */
    @Test
    void aLayoutThatDoesNotLookForOtherMoneyNeedsItsColumns() throws IOException {
        again(WITH_FEE, PLAIN, "sum=sum");
        Problems problems = new Problems();
        LayoutReader.read("report.yaml", yaml().replace("unread: []\n", ""), problems);
        assertThat(problems.kept())
                .extracting(Problem::toString)
                .containsExactly(
                        "report.yaml:50 [optional]: found 'Commission'; expected the key unread beside a column of money that may be missing, so that one with a new name is told, such as unread: []");
    }
}
