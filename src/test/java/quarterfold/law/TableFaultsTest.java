package quarterfold.law;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.List;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A table that cannot be used stops the program and says where, what was found and expected. */
class TableFaultsTest {

    /** Each row is put below the header of its table. */
    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource(
            delimiterString = " => ",
            quoteCharacter = '~',
            textBlock =
                    """
        rates.csv => green,20,2026-13-01,,a text => rates.csv:2: [from]: found '2026-13-01'; expected a date such as 2011-01-04
        rates.csv => green,20,,,a text => rates.csv:2: [from]: found ''; expected a date such as 2011-01-04
        rates.csv => green,20,2026-01-01,1/2/2026,a text => rates.csv:2: [to]: found '1/2/2026'; expected a date such as 2011-01-04
        rates.csv => green,20,2026-01-02,2026-01-01,a text => rates.csv:2: [to]: 2026-01-01 is before 2026-01-02
        rates.csv => green,20,2026-01-01,, => rates.csv:2: [source] is empty; cite the text that sets this row
        rates.csv => green,20%,2026-01-01,,a text => rates.csv:2: [percent]: found '20%'; expected a percentage such as 17.5
        rates.csv => green,-20,2026-01-01,,a text => rates.csv:2: [percent]: found '-20'; expected a percentage such as 17.5
        rates.csv => ,20,2026-01-01,,a text => rates.csv:2: [category] is empty
        rates.csv => green,20,2026-01-01,a text => rates.csv:2: has 4 cells; expected 5, one for each of [category, percent, from, to, source]
        rates.csv => green,20,2026-01-01,,a text,more => rates.csv:2: has 6 cells; expected 5, one for each of [category, percent, from, to, source]
        rates.csv => standard,20,2012-01-01,2012-12-31,a text => rates.csv:9: 'standard' has another row in force on the same days
        rates.csv => standard,20,1900-01-01,1973-04-01,a text => rates.csv:3: 'standard' has another row in force on the same days
        limits.csv => speed,70 mph,miles,2026-01-01,,a text => limits.csv:2: [amount]: found '70 mph'; expected a number such as 90000
        limits.csv => speed,0.00001,miles,2026-01-01,,a text => limits.csv:2: [amount]: found '0.00001'; expected a number such as 90000
        limits.csv => speed,70,,2026-01-01,,a text => limits.csv:2: [unit] is empty
        areas.csv => GB,gb,2026-01-01,,a text => areas.csv:3: 'GB' has another row in force on the same days
        areas.csv => FO,,2026-01-01,,a text => areas.csv:2: [area] is empty
        choices.csv => tea,,yes|no,Tea?,a text => choices.csv:2: [default] is empty
        choices.csv => tea,maybe,yes|no,Tea?,a text => choices.csv:2: needs a source, and a default among its values
        choices.csv => tea,yes,yes|no,Tea?, => choices.csv:2: needs a source, and a default among its values
        choices.csv => blocked-in-box-7,yes,yes|no,Tea?,a text => choices.csv:5: [name]: 'blocked-in-box-7' has a row already
        queries.csv => no-exchange-rate,yes,What now? => queries.csv:3: [code]: 'no-exchange-rate' has a row already
        queries.csv => what-now,yes, => queries.csv:2: [question] is empty
        queries.csv => what-now,maybe,What now? => queries.csv:2: [holds_close]: found 'maybe'; expected yes or no
        boxes.csv => uk-salt,1,vat,plus,,,2026-01-01,,a text => boxes.csv:2: [treatment]: found 'uk-salt'; expected a treatment of treatments.csv or a name of adjustments.csv
        boxes.csv => money-only,10,vat,plus,,,2026-01-01,,a text => boxes.csv:2: [box]: found '10'; expected a box of form.csv that sums entries, or a total of totals.csv
        boxes.csv => money-only,3,vat,plus,,,2026-01-01,,a text => boxes.csv:2: [box]: found '3'; expected a box of form.csv that sums entries, or a total of totals.csv
        boxes.csv => money-only,1,tax,plus,,,2026-01-01,,a text => boxes.csv:2: [measure]: found 'tax'; expected net, vat, claim or gross
        boxes.csv => money-only,1,vat,+,,,2026-01-01,,a text => boxes.csv:2: [sign]: found '+'; expected plus or minus
        boxes.csv => uk-sale,1,vat,plus,,,2026-01-01,,a text => boxes.csv:11: 'uk-sale 1 VAT' has another row in force on the same days
        boxes.csv => uk-sale,1,vat,minus,cash,,2026-01-01,,a text => boxes.csv:11: 'uk-sale 1 VAT' has another row in force on the same days
        form.csv => 10,A box,pennies,nearest-penny,entries,boxTen,2026-01-01,,a text => form.csv:2: [unit]: found 'pennies'; expected pence or pounds
        form.csv => 10,A box,pence,nearest,entries,boxTen,2026-01-01,,a text => form.csv:2: [rounding]: found 'nearest'; expected nearest-penny or pounds-down
        form.csv => 10,A box,pence,nearest-penny,product 1 2,boxTen,2026-01-01,,a text => form.csv:2: [formula]: found 'product 1 2'; expected entries, sum and boxes such as 'sum 1 2', or gap and two boxes
        form.csv => 10,A box,pence,nearest-penny,entries 1,boxTen,2026-01-01,,a text => form.csv:2: [formula]: found 'entries 1'; expected entries, sum and boxes such as 'sum 1 2', or gap and two boxes
        form.csv => 10,A box,pence,nearest-penny,sum,boxTen,2026-01-01,,a text => form.csv:2: [formula]: found 'sum'; expected entries, sum and boxes such as 'sum 1 2', or gap and two boxes
        form.csv => 10,A box,pence,nearest-penny,gap 1,boxTen,2026-01-01,,a text => form.csv:2: [formula]: found 'gap 1'; expected entries, sum and boxes such as 'sum 1 2', or gap and two boxes
        form.csv => 10,A box,pence,nearest-penny,gap 1 2 3,boxTen,2026-01-01,,a text => form.csv:2: [formula]: found 'gap 1 2 3'; expected entries, sum and boxes such as 'sum 1 2', or gap and two boxes
        form.csv => 10,A box,pence,nearest-penny,sum 1 2,boxTen,2026-01-01,,a text => form.csv: box 10 takes box 1, which no row above it states
        form.csv => 10,A box,pence,nearest-penny,sum 10,boxTen,2026-01-01,,a text => form.csv: box 10 takes box 10, which no row above it states
        form.csv => 10,A box,pence,nearest-penny,sum 11,boxTen,2026-01-01,,a text => form.csv: box 10 takes box 11, which no row above it states
        form.csv => 1,A box,pence,nearest-penny,entries,boxOne,2026-01-01,,a text => form.csv:3: '1' has another row in force on the same days
        form.csv => 10,,pence,nearest-penny,entries,boxTen,2026-01-01,,a text => form.csv:2: [label] is empty
        form.csv => 10,A box,pence,nearest-penny,entries,,2026-01-01,,a text => form.csv:2: [export_name] is empty
        blocked.csv => stock,half,Goods,2026-01-01,,a text => blocked.csv:2: [percent_blocked]: found 'half'; expected a percentage such as 50
        blocked.csv => tea,50,,2026-01-01,,a text => blocked.csv:2: [words] is empty
        evidence.csv => napkin,perhaps,,,Ink,2026-01-01,,a text => evidence.csv:2: [claims]: found 'perhaps'; expected yes or no
        evidence.csv => napkin,yes,ten,,Ink,2026-01-01,,a text => evidence.csv:2: [up_to]: found 'ten'; expected an amount such as 250.00
        evidence.csv => napkin,yes,10,,,2026-01-01,,a text => evidence.csv:2: [must_show] is empty
        periods.csv => due-extra-days,9,days,2026-01-01,,a text => periods.csv:5: 'due-extra-days' has another row in force on the same days
        periods.csv => due-extra-days,,days,1980-01-01,1980-01-01,a text => periods.csv:2: [value] is empty
        flat-rates.csv => 056,Juggling,a third,2026-01-01,,a text => flat-rates.csv:2: [percent]: found 'a third'; expected a percentage such as 7.5
        flat-rates.csv => ,Juggling,9,2026-01-01,,a text => flat-rates.csv:2: [id] is empty
        flat-rates.csv => 056,,9,2026-01-01,,a text => flat-rates.csv:2: [sector] is empty
        flat-rates.csv => 001,Juggling,9,2026-01-01,,a text => flat-rates.csv:3: '001' has another row in force on the same days
        fuel-scale.csv => 127.5,9,,,2026-01-01,,a text => fuel-scale.csv:2: [co2_from]: found '127.5'; expected whole grams such as 125
        fuel-scale.csv => -5,9,,,2026-01-01,,a text => fuel-scale.csv:2: [co2_from]: found '-5'; expected whole grams such as 125
        fuel-scale.csv => 127,much,,,2026-01-01,,a text => fuel-scale.csv:2: [months_12]: found 'much'; expected an amount such as 163
        fuel-scale.csv => 127,,9.99999,,2026-01-01,,a text => fuel-scale.csv:2: [months_3]: found '9.99999'; expected an amount such as 163
        fuel-scale.csv => 127,,,-,2026-01-01,,a text => fuel-scale.csv:2: [months_1]: found '-'; expected an amount such as 163
        fuel-scale.csv => 127,,,,2026-01-01,,a text => fuel-scale.csv:2: [months_12], [months_3] and [months_1] are all empty
        fuel-scale.csv => 125,9,,,2023-04-30,2023-04-30,a text => fuel-scale.csv:4: '125' has another row in force on the same days
        evidence-shows.csv => ,number,,A number,2026-01-01,,a text => evidence-shows.csv:2: [evidence] is empty
        evidence-shows.csv => invoice,,,A number,2026-01-01,,a text => evidence-shows.csv:2: [particular] is empty
        evidence-shows.csv => invoice,colour,,,2026-01-01,,a text => evidence-shows.csv:2: [words] is empty
        evidence-shows.csv => invoice,tax-point,,A time,2026-01-01,,a text => evidence-shows.csv:5: 'invoice tax-point' has another row in force on the same days
        timing.csv => nothing,bad-debt,2026-01-01,,a text => timing.csv:2: [treatment]: found 'nothing'; expected a treatment of treatments.csv
        timing.csv => uk-sale,tomorrow,2026-01-01,,a text => timing.csv:2: [rule]: found 'tomorrow'; expected export-evidence, supplier-unpaid, bad-debt or cash-accounting
        timing.csv => uk-sale,bad-debt,2026-01-01,,a text => timing.csv:9: 'uk-sale bad-debt' has another row in force on the same days
        """)
    void badRow(String table, String row, String message) {
        refused(table, text -> text.replaceFirst("\n", "\n" + row + "\n"), message);
    }

    /** Each cell is put in an otherwise good first row of treatments.csv. */
    @ParameterizedTest(name = "{0} of ''{1}''")
    @CsvSource(
            delimiterString = " => ",
            quoteCharacter = '~',
            emptyValue = "",
            textBlock =
                    """
        vat => printed|blue => treatments.csv:2: [vat]: found 'printed|blue'; expected one or more of [printed, nil, unstated], joined by |
        starts => GB => treatments.csv:2: [starts]: found 'GB'; expected one or more of [gb, ni, eu, elsewhere], joined by |
        evidence => invoice| => treatments.csv:2: [evidence]: found 'invoice|'; expected one or more of [invoice, simplified, none-needed, import-certificate, postponed-statement, export, self-billed, alternative, missing, unstated], joined by |
        choice => blocked-in-box-7=maybe => treatments.csv:2: [choice]: found 'blocked-in-box-7=maybe'; expected name=value of choices.csv
        choice => blocked-in-box-7 => treatments.csv:2: [choice]: found 'blocked-in-box-7'; expected name=value of choices.csv
        rate => green => treatments.csv:2: [rate]: found 'green'; expected liability or a category of rates.csv
        query => what-now => treatments.csv:2: [query]: found 'what-now'; expected a code of queries.csv
        vat_is => outside => treatments.csv:2: [vat_is]: found 'outside'; expected none, inside, on-document, on-margin or import
        claim => half => treatments.csv:2: [claim]: found 'half'; expected yes or no
        rule => ~~ => treatments.csv:2: [rule] is empty
        treatment => ~~ => treatments.csv:2: [treatment] is empty
        why => ~~ => treatments.csv:2: [why] is empty
        source => ~~ => treatments.csv:2: [source] is empty; cite the text that sets this row
        rule => S17a => treatments.csv: two rows have the same name in [rule]
        """)
    void badTreatment(String column, String cell, String message) {
        refused("treatments.csv", text -> withRow(text, column, cell), message);
    }

    @Test
    void aGoodRowIsTaken() {
        assertThatCode(
                        () ->
                                Tables.with(
                                        "treatments.csv",
                                        text -> withRow(text, "vat", "printed| nil")))
                .doesNotThrowAnyException();
    }

    /** Rows that meet, one the day after the other, do not overlap. */
    @Test
    void rowsMayMeet() {
        assertThatCode(
                        () ->
                                Tables.withFirstRow(
                                        "rates.csv", "standard,9,1900-01-01,1973-03-31,a text"))
                .doesNotThrowAnyException();
        assertThatCode(
                        () ->
                                Tables.withFirstRow(
                                        "boxes.csv",
                                        "uk-sale,1,vat,plus,,,1900-01-01,1973-03-31,a text"))
                .doesNotThrowAnyException();
    }

    @Test
    void aColumnIsMissing() {
        refused(
                "rates.csv",
                text -> text.replaceFirst("percent", "per_cent"),
                "rates.csv: has no column percent");
        refused(
                "treatments.csv",
                text -> text.replaceFirst("customer_vat", "customer_number"),
                "treatments.csv: has no column customer_vat");
    }

    @Test
    void whatIsNoTable() {
        refused(
                "rates.csv",
                text -> text.replaceFirst("standard,10", "\"standard\"x,10"),
                "rates.csv: cannot be read as CSV: Invalid character between encapsulated token and"
                        + " delimiter at line: 2, position: 43");
        refused(
                "rates.csv",
                text -> text.replaceFirst("percent", ""),
                "rates.csv: cannot be read as CSV: A header name is missing in [category, , from,"
                        + " to, source]");
    }

    private static void refused(String table, UnaryOperator<String> change, String message) {
        assertThatThrownBy(() -> Tables.with(table, change))
                .isInstanceOf(LawException.class)
                .hasMessage(message);
    }

    /** The table with a first row that is good but for one cell. */
    private static String withRow(String text, String column, String cell) {
        List<String> columns = List.of(text.substring(0, text.indexOf('\n')).strip().split(","));
        String[] cells = new String[columns.size()];
        Arrays.fill(cells, "");
        set(cells, columns, "rule", "Z99");
        set(cells, columns, "treatment", "money-only");
        set(cells, columns, "vat_is", "none");
        set(cells, columns, "claim", "no");
        set(cells, columns, "why", "A rule of this test");
        set(cells, columns, "from", "2026-01-01");
        set(cells, columns, "source", "a text");
        set(cells, columns, column, cell);
        return text.replaceFirst("\n", "\n" + String.join(",", cells) + "\n");
    }

    private static void set(String[] cells, List<String> columns, String column, String cell) {
        cells[columns.indexOf(column)] = cell;
    }
}
