package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Every mistake in a layout is told with its line and key. */
class LayoutTest {
    private static final String SOUND =
            """
            layout: till
            title: A till's report
            file:
              delimiter: ";"
              encoding: windows-1252
              header_row: 2
              blank: ["-", "n/a"]
            dates:
              pattern: "dd/MM/yyyy HH:mm"
              zone: UTC
            numbers:
              decimal: ","
              thousands: "."
              negative: [minus, brackets]
            signs: owner
            currency: GBP
            fields:
              date: When
            constants:
              channel: Till
            worked_out:
              Sum: [Count, Price]
            rows:
              - when: {Type: [Sale, Late sale]}
                enter:
                  - {kind: sale, gross: Sum, set: {category: counter}}
              - when: {}
                set_aside: "no money"
            tax:
              column: Tax
              withheld: Kept tax
            check:
              - {sum: [Sum, Tax, Kept tax], equals: Total}
            amounts: [Sum, Tax, Kept tax]
            payout:
              column: Paid out
            """;

    private static List<String> problems(String yaml) {
        Problems problems = new Problems();
        LayoutReader.read("till.yaml", yaml, problems);
        return problems.kept().stream().map(Problem::toString).toList();
    }

    /** The sound layout with one text put for another. */
    private static List<String> changed(String from, String to) {
        assertThat(SOUND).contains(from);
        return problems(SOUND.replace(from, to));
    }

    @Test
    void aSoundLayoutHasNone() {
        assertThat(problems(SOUND)).isEmpty();
    }

    @Test
    void namesTheColumnsAFileMustHave() {
        Layout layout = LayoutReader.read("till.yaml", SOUND, new Problems());

        assertThat(layout.columns())
                .containsExactlyInAnyOrder(
                        "When", "Type", "Count", "Price", "Tax", "Kept tax", "Total", "Paid out");
    }

    /** The library goes down without a limit, until the stack is used up. */
    @Test
    void listsWithinListsWithoutEnd() {
        assertThat(problems("layout: till\nrows: " + "[".repeat(100_000)))
                .containsExactly(
                        "till.yaml:2: found text that is not YAML (lists or keys within one another, more than 50 deep); expected keys and values, such as layout: my-report");
    }

    @Test
    void textThatIsNotYaml() {
        assertThat(problems("layout: till\nfile: {delimiter: \",\"\n"))
                .containsExactly(
                        "till.yaml:3: found text that is not YAML (expected ',' or '}', but got <stream end>); expected keys and values, such as layout: my-report");
        assertThat(problems(""))
                .containsExactly(
                        "till.yaml:1: found no keys; expected keys and values, such as layout: my-report");
        assertThat(problems("- a\n- b\n"))
                .containsExactly(
                        "till.yaml:1: found no keys; expected keys and values, such as layout: my-report");
    }

    @Test
    void anEmptyMappingLacksAllThatIsNeeded() {
        assertThat(problems("title: T\n"))
                .containsExactly(
                        "till.yaml:1 [layout]: found nothing; expected a text, such as layout: till",
                        "till.yaml:1 [dates.pattern]: found nothing; expected a text, such as pattern: yyyy-MM-dd",
                        "till.yaml:1 [signs]: found nothing; expected a text, such as signs: document",
                        "till.yaml:1 [fields.date]: found nothing; expected a column, such as date: Date",
                        "till.yaml:1 [rows]: found no rule; expected at least one, such as - {when: {}, enter: [{kind: sale, gross: Amount}]}",
                        "till.yaml:1 [amounts]: found nothing; expected columns, such as amounts: [Amount]");
    }

    @Test
    void aNameThatIsNotTheFiles() {
        assertThat(changed("layout: till", "layout: tills"))
                .containsExactly(
                        "till.yaml:1 [layout]: found 'tills'; expected the file's own name without .yaml, and not plain-sheet, such as till");
    }

    @Test
    void keysThatMeanNothing() {
        assertThat(changed("currency: GBP", "curency: GBP"))
                .containsExactly(
                        "till.yaml:16 [curency]: found a key that means nothing here; expected one of layout, title, file, dates, numbers, signs, currency, fields, constants, worked_out, rows, tax, check, amounts, payout, outgoing, sign, other_rows, balance, repeats, optional, text, when, shapes, above, tables_below, unread, expect, such as layout");
        assertThat(changed("  zone: UTC", "  timezone: UTC"))
                .containsExactly(
                        "till.yaml:10 [dates.timezone]: found a key that means nothing here; expected one of pattern, zone, language, such as pattern");
        assertThat(changed("kind: sale, gross: Sum", "kind: sale, gross: Sum, amount: Sum"))
                .containsExactly(
                        "till.yaml:26 [rows.enter.amount]: found a key that means nothing here; expected one of kind, gross, net, vat, set, such as kind");
    }

    @Test
    void aKeyTwice() {
        assertThat(changed("currency: GBP", "currency: GBP\ncurrency: EUR"))
                .containsExactly(
                        "till.yaml:17 [currency]: found the key again, first on line 16; expected it once");
    }

    @Test
    void theFileAroundTheCells() {
        assertThat(changed("delimiter: \";\"", "delimiter: \"||\""))
                .containsExactly(
                        "till.yaml:4 [file.delimiter]: found '||'; expected one character, such as \",\" or \"\\t\"");
        assertThat(changed("windows-1252", "latin-9000"))
                .containsExactly(
                        "till.yaml:5 [file.encoding]: found 'latin-9000'; expected the name of a character encoding, such as UTF-8");
        assertThat(changed("header_row: 2", "header_row: 0"))
                .containsExactly(
                        "till.yaml:6 [file.header_row]: found '0'; expected a row from 1 to 9999, or none, such as 1");
    }

    @Test
    void datesAndNumbers() {
        assertThat(changed("dd/MM/yyyy HH:mm", "dd/bb/yyyy"))
                .containsExactly(
                        "till.yaml:9 [dates.pattern]: found 'dd/bb/yyyy'; expected a date pattern with a year, a month and a day, such as dd/MM/yyyy");
        assertThat(changed("dd/MM/yyyy HH:mm", "dd/MM HH:mm"))
                .containsExactly(
                        "till.yaml:9 [dates.pattern]: found 'dd/MM HH:mm'; expected a date pattern with a year, a month and a day, such as dd/MM/yyyy");
        assertThat(changed("zone: UTC", "zone: London"))
                .containsExactly(
                        "till.yaml:10 [dates.zone]: found 'London'; expected the name of a time zone, such as Europe/London");
        assertThat(changed("decimal: \",\"", "decimal: \";\""))
                .containsExactly(
                        "till.yaml:12 [numbers.decimal]: found ';'; expected a point or a comma, such as \".\"",
                        "till.yaml:13 [numbers.thousands]: found '.'; expected a point, comma, apostrophe or space that is not the decimal mark, such as \",\"");
        assertThat(changed("[minus, brackets]", "[minus, red]"))
                .containsExactly(
                        "till.yaml:14 [numbers.negative]: found 'red'; expected minus, trailing-minus, brackets, plus or dr, such as [minus, brackets]");
    }

    @Test
    void signsAndCurrency() {
        assertThat(changed("signs: owner", "signs: mine"))
                .containsExactly(
                        "till.yaml:15 [signs]: found 'mine'; expected owner (+ comes in, - goes out), document (as printed) or turned (+ goes out, - comes in), such as document");
        assertThat(changed("currency: GBP", "currency: pounds"))
                .containsExactly(
                        "till.yaml:16 [currency]: found 'pounds'; expected a currency code of ISO 4217, such as GBP");
    }

    @Test
    void fieldsAndTheirValues() {
        String fields =
                "found a name that is no field here; expected one of date, document, party, party_country, party_vat, description, product, category, currency, rate, from, to, customer, customer_vat, channel, channel_collects, settlement, order, file, evidence, paid, business_use, sent, invoiced, held, due, evidenced, adopted, approval, cost, consignment, sterling_vat, exchange_day, on_hand, use, addressed, co2, error, account, statement_month, amended, advance, prepaid, follows, such as order";
        assertThat(changed("  date: When", "  date: When\n  gross: Sum"))
                .containsExactly("till.yaml:19 [fields.gross]: " + fields);
        assertThat(changed("  channel: Till", "  chanel: Till"))
                .containsExactly("till.yaml:20 [constants.chanel]: " + fields);
        assertThat(changed("  channel: Till", "  customer: everyone"))
                .containsExactly(
                        "till.yaml:20 [constants.customer]: found 'everyone'; expected one of consumer, business, such as consumer");
        assertThat(changed("category: counter", "evidence: receipt"))
                .containsExactly(
                        "till.yaml:26 [rows.enter.set.evidence]: found 'receipt'; expected one of invoice, simplified, none-needed, import-certificate, postponed-statement, export, self-billed, alternative, missing, unstated, such as invoice");
    }

    @Test
    void rules() {
        assertThat(changed("kind: sale", "kind: sold"))
                .containsExactly(
                        "till.yaml:26 [rows.enter.kind]: found 'sold'; expected "
                                + Field.KIND.expected());
        assertThat(changed("kind: sale, gross: Sum,", "kind: sale,"))
                .containsExactly(
                        "till.yaml:26 [rows.enter.gross]: found no amount; expected a column for gross, net or vat, such as gross: Amount");
        assertThat(changed("    set_aside: \"no money\"\n", ""))
                .containsExactly(
                        "till.yaml:27 [rows.enter]: found neither entries nor a reason to set the row aside; expected either entries or a reason, such as enter: [{kind: sale, gross: Amount}]");
        assertThat(changed("when: {Type: [Sale, Late sale]}", "when: {}"))
                .containsExactly(
                        "till.yaml:27 [rows.when]: found a rule below one that fits every row; expected when: {} last, such as - {when: {}, …}");
    }

    @Test
    void partsThatDoNotFitTogether() {
        assertThat(changed("amounts: [Sum, Tax, Kept tax]", "amounts: [Sum, Tax, Tax]"))
                .containsExactly(
                        "till.yaml:34 [amounts]: found a column twice; expected each once, such as [Amount]",
                        "till.yaml:31 [tax.withheld]: found 'Kept tax'; expected a column that amounts names too, such as amounts: [Price, Kept tax]");
        assertThat(changed("signs: owner", "signs: document"))
                .containsExactly(
                        "till.yaml:30 [tax.column]: found a tax column beside signs: document; expected signs: owner, or vat: in each entry, such as {kind: sale, gross: Price, vat: Tax}");
        assertThat(changed("Sum: [Count, Price]", "Sum: [Count]"))
                .containsExactly(
                        "till.yaml:22 [worked_out.Sum]: found 1 columns; expected the two to multiply, such as [Quantity, Price]");
    }

    @Test
    void entriesThatTheSignsOrTheTaxDoNotAllow() {
        assertThat(changed("kind: sale, gross: Sum,", "kind: sale, net: Sum,"))
                .containsExactly(
                        "till.yaml:25 [rows.enter]: found a sale with net or vat beside a tax column; expected its price alone, such as {kind: sale, gross: Price}");
        assertThat(changed("kind: sale,", "kind: import-vat-postponed,"))
                .containsExactly(
                        "till.yaml:25 [rows.enter]: found import-vat-postponed, which moves no money, under signs: owner; expected amounts as printed, such as signs: document");
    }
}
