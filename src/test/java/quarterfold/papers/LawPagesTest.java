package quarterfold.papers;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import quarterfold.law.Law;
import quarterfold.law.LawWords;
import quarterfold.law.TableFile;
import quarterfold.law.TableRows;
import quarterfold.law.Tables;
import quarterfold.ledger.Kind;

/** The law's page holds every row of every table, each in words that say what the row says. */
class LawPagesTest {

    private static final Law LAW = Law.of("GB");
    private static final LawWords WORDS = LawWords.of("GB");
    private static final String WHOLE = pages(LAW).whole();

    private static LawPages pages(Law law) {
        return new LawPages(law, WORDS, Optional.empty());
    }

    static Stream<TableRows> tables() {
        return LAW.files().stream().map(TableRows::of);
    }

    /** The block of the heading that begins so. */
    private static String block(String whole, String heading) {
        int start = whole.indexOf("### " + heading);
        assertThat(start).as(heading).isNotNegative();
        int end = whole.indexOf("\n#", start);
        return whole.substring(start, end < 0 ? whole.length() : end + 1);
    }

    /** The row of a rule as a spreadsheet counts it: tables grow. */
    private static int row(String rule) {
        return LAW.treatments().rows().stream().map(r -> r.value().rule()).toList().indexOf(rule)
                + 2;
    }

    @Test
    void aSupplyAndWhatReducesIt() {
        assertThat(block(WHOLE, "S11a"))
                .isEqualTo(
                        """
                        ### S11a, S11b: NI dispatch ‡

                        Goods sent from Northern Ireland to a business in the European Union, with evidence that they left:
                        zero-rated.

                        - **When:** sale, delivery charge or discount taken back; the goods start in Northern Ireland; the goods go to
                          the European Union; the customer is a business; the customer's VAT number is another country's; the document
                          held is evidence of export
                        - **VAT:** at the zero rate: none; the value leaves out any tax the document prints
                        - **Boxes:** adds the value without VAT to box 6 (the book is on standard accounting or cash accounting); adds
                          the value without VAT to box 8; adds the value with VAT to the total flat-rate-turnover (the book is on the
                          flat-rate scheme)
                        - **Reclaimed:** no
                        - **In force:** from 1 January 2021; rows %d and %d of the table
                        - **Source:** VATA 1994 s.30 and Sch 9ZB; VAT Notice 700/12 box 8, wording since 8 April 2021 (secondary
                          source).
                        - **S11b:** for refund of a sale, refund of a delivery charge or discount: the same, but takes the value
                          without VAT from box 6 (the book is on standard accounting or cash accounting); takes the value without VAT
                          from box 8; takes the value with VAT from the total flat-rate-turnover (the book is on the flat-rate
                          scheme). The price is reduced or repaid, so it is taken away in the period of the repayment. Source: VAT
                          Regulations 1995 reg 38(3)(b) and (5) and reg 24B; and the above.

                        """
                                .formatted(row("S11a"), row("S11b")));
    }

    @Test
    void aRuleOfEveryKind() {
        assertThat(block(WHOLE, "I01"))
                .isEqualTo(
                        """
                        ### I01: Import paid

                        Import VAT paid at the border, with the import VAT certificate: reclaimed; the value of the goods is in box 7,
                        worked back from the VAT at the standard rate where none is stated.

                        - **When:** import VAT paid; the document held is an import VAT certificate
                        - **VAT:** at the standard rate: as printed, or else the rate of the value, to the penny; the value as stated,
                          or else that on which the rate gives the VAT
                        - **Boxes:** adds the VAT that may be reclaimed to box 4 and the value without VAT to box 7
                        - **Reclaimed:** yes, as far as its category is not blocked
                        - **Where the book chooses:** import-value-from: import-entry (which is the default)
                        - **In force:** from 1 April 1973; row %d of the table
                        - **Source:** VATA 1994 s.24(1)(c) and s.15; HMRC manual IMPS03100; gov.uk 'Complete your VAT Return to
                          account for import VAT'.

                        """
                                .formatted(row("I01")));
        assertThat(block(WHOLE, "S18"))
                .contains("- **Query:** eu-before-2021\n")
                .contains(
                        "- **In force:** 1 April 1973 to 31 December 2020; row %d of the table\n"
                                .formatted(row("S18")));
    }

    @Test
    void theFirstRulesAreThoseOfSeveralSidesAndEachSideHasItsSection() {
        List<String> headings =
                WHOLE.lines()
                        .filter(l -> l.startsWith("#"))
                        .filter(l -> !l.startsWith("# "))
                        .toList();
        assertThat(section(headings, "A01")).isEqualTo("Rules for more than one side");
        assertThat(section(headings, "S17a")).isEqualTo("Sales");
        assertThat(section(headings, "R10")).isEqualTo("Purchases and services from abroad");
        assertThat(section(headings, "U15a")).isEqualTo("Purchases and services from abroad");
        assertThat(section(headings, "G01")).isEqualTo("Goods from abroad and imports");
        assertThat(section(headings, "I04")).isEqualTo("Goods from abroad and imports");
        assertThat(section(headings, "M01")).isEqualTo("Other money");
    }

    private static String section(List<String> headings, String rule) {
        String section = "";
        for (String heading : headings) {
            if (heading.startsWith("## ")) {
                section = heading.substring(3);
            } else if (heading.startsWith("### " + rule)) {
                return section;
            }
        }
        return "none has " + rule;
    }

    /** Without its line breaks and marks, the page has every cell that is not put into words. */
    @ParameterizedTest
    @MethodSource("tables")
    void everyRowOfEveryTable(TableRows table) {
        String page = flat(WHOLE);
        List<String> told =
                switch (table.name()) {
                    case "treatments.csv" -> List.of("rule", "why", "query", "source");
                    case "boxes.csv" -> List.of("source");
                    case "form.csv" -> List.of("box", "label", "unit", "export_name", "source");
                    default -> table.columns().stream().filter(c -> !c.equals("values")).toList();
                };
        for (TableRows.Row row : table.rows()) {
            for (String column : told) {
                for (String part : row.cell(column).split("[|;]", -1)) {
                    assertThat(page)
                            .as("%s %s", table.name(), row.number())
                            .containsIgnoringCase(flat(part));
                }
            }
        }
        assertThat(told).isNotEmpty();
    }

    private static String flat(String text) {
        return text.replace("\\", "").replace("\n  ", " ").replace("\n", " ").strip();
    }

    @Test
    void everyRuleHasOnePlace() {
        List<String> rules =
                Pattern.compile("(?m)^### ([A-Z0-9a-z]+)(?:, ([A-Z0-9a-z]+))?: ")
                        .matcher(WHOLE)
                        .results()
                        .flatMap(
                                r ->
                                        Stream.of(
                                                r.group(1),
                                                Optional.ofNullable(r.group(2)).orElse("")))
                        .filter(r -> !r.isEmpty())
                        .toList();
        assertThat(rules)
                .containsExactlyInAnyOrderElementsOf(
                        LAW.treatments().rows().stream().map(r -> r.value().rule()).toList());
    }

    /** Every row of a table has its headings' number of cells: no bar in a text ends a cell. */
    @Test
    void tablesAreEven() {
        int bars = 0;
        int rows = 0;
        for (String line : WHOLE.lines().toList()) {
            if (!line.startsWith("|")) {
                bars = 0;
                continue;
            }
            int found = line.replace("\\|", "").replaceAll("[^|]", "").length();
            bars = bars == 0 ? found : bars;
            assertThat(found).as(line).isEqualTo(bars);
            rows++;
        }
        assertThat(rows).isGreaterThan(200);
    }

    /** GitHub's name of a heading: small letters, no marks, hyphens for blanks. */
    @Test
    void contentsLeadToHeadings() {
        List<String> places =
                WHOLE.lines()
                        .filter(l -> l.startsWith("## "))
                        .map(
                                l ->
                                        l.substring(3)
                                                .toLowerCase(Locale.ROOT)
                                                .replace(",", "")
                                                .replace(' ', '-'))
                        .toList();
        List<String> links =
                Pattern.compile("(?m)^- \\[[^]]+\\]\\(#([^)]+)\\)$")
                        .matcher(WHOLE)
                        .results()
                        .map(m -> m.group(1))
                        .toList();
        assertThat(links).isEqualTo(places).hasSizeGreaterThan(10);
    }

    /** Counted in the files' lines, of which no row has two. */
    @ParameterizedTest
    @MethodSource("tables")
    void whatWasNotCheckedIsCounted(TableRows table) {
        if (!table.columns().contains("source")) {
            assertThat(WHOLE).doesNotContain("| `" + table.name() + "` |");
            return;
        }
        String text =
                LAW.files().stream()
                        .filter(f -> f.name().equals(table.name()))
                        .findFirst()
                        .orElseThrow()
                        .text();
        List<String> lines = text.lines().skip(1).toList();
        assertThat(WHOLE)
                .contains(
                        "| `%s` | %d | %d | %d | %d |\n"
                                .formatted(
                                        table.name(),
                                        lines.size(),
                                        with(lines, "from memory|secondary source"),
                                        with(lines, "from memory"),
                                        with(lines, "secondary source")));
    }

    private static long with(List<String> lines, String words) {
        return lines.stream().filter(l -> Pattern.compile(words).matcher(l).find()).count();
    }

    @ParameterizedTest
    @EnumSource
    void everyKindHasWords(Kind kind) {
        assertThat(WORDS.find("kind", kind.code()))
                .as("words.csv: kind,%s,its words", kind.code())
                .isPresent();
    }

    @Test
    void onADayOnlyWhatIsInForce() {
        LawPages before = new LawPages(LAW, WORDS, Optional.of(LocalDate.of(2020, 12, 31)));
        LawPages after = new LawPages(LAW, WORDS, Optional.of(LocalDate.of(2021, 1, 1)));
        assertThat(before.rule("S18")).isPresent();
        assertThat(after.rule("S18")).isEmpty();
        assertThat(before.rule("I04")).isEmpty();
        assertThat(after.rule("I04")).isPresent();
        assertThat(after.table("rates"))
                .contains(
                        """
                        ## Rates of VAT

                        `rates.csv`, 4 rows.

                        | Category | Percent | In force | Source |
                        | --- | --- | --- | --- |
                        | standard †‡ | 20 | from 2011-01-04 | Finance (No. 2) Act 2010 s.3, section from memory; rate and date from published rate tables (secondary source) |
                        | reduced †‡ | 5 | from 1997-09-01 | VATA 1994 s.29A and Sch 7A, since extended to other goods; section from memory, rate and date from published rate tables (secondary source) |
                        | hospitality ‡ | 5 | 2020-07-15 to 2021-09-30 | Temporary reduced rate for hospitality, holiday accommodation and attractions; 8 July 2020 was only the day it was announced (secondary source) |
                        | zero † | 0 | from 1973-04-01 | VATA 1994 s.30 and Sch 8, and the Finance Act 1972 before it (from memory) |

                        † from memory, ‡ from a secondary source: in whole, or in the part its source names.
                        """);
        assertThat(
                        new LawPages(LAW, WORDS, Optional.of(LocalDate.of(1970, 1, 1)))
                                .table("rates.csv"))
                .hasValueSatisfying(t -> assertThat(t).contains("No row is in force."));
    }

    /** A rule and its reduction stand apart as soon as anything else differs between them. */
    @ParameterizedTest
    @CsvSource(
            delimiterString = " => ",
            textBlock =
                    """
        treatments.csv => ,liability,inside,no,,"Sale in the United Kingdom: the VAT is the fraction of the price, at the rate of the tax point; the price => ,standard,inside,no,,"Sale in the United Kingdom: the VAT is the fraction of the price, at the rate of the tax point; the price
        treatments.csv => no,,"Sale in the United Kingdom: the VAT is the fraction of the price, at the rate of the tax point; the price => no,late-purchase,"Sale in the United Kingdom: the VAT is the fraction of the price, at the rate of the tax point; the price
        treatments.csv => the rate of the tax point; the price is reduced => the rate of that day; the price is reduced
        boxes.csv => uk-sale-reduced,6,net,minus => uk-sale-reduced,6,net,plus
        boxes.csv => uk-sale-reduced,6,net,minus => uk-sale-reduced,7,net,minus
        boxes.csv => (uk-sale-reduced,6,net,minus,.*)1973-04-01 => $11973-04-02
        """)
    void twinsOnlyWhereNothingElseDiffers(String table, String found, String instead) {
        assertThat(WHOLE).contains("### S17a, S17b: UK sale\n");
        String whole = pages(Tables.with(table, text -> text.replaceAll(found, instead))).whole();
        assertThat(whole)
                .contains("### S17a: UK sale\n")
                .contains("### S17b: UK sale: refund or discount\n");
    }

    /** What a table says in a column of a later day is shown, and so is a table of a later day. */
    @Test
    void columnsAndTablesThisPageDoesNotKnow() {
        Law law = Tables.with("boxes.csv", LawPagesTest::withWeather);
        assertThat(block(pages(law).whole(), "U15a"))
                .contains(
                        """
                        - **Boxes:** adds the VAT that may be reclaimed to box 4 and the value without VAT to box 7 (the weather is
                          wet or dry)
                        """);
        assertThat(pages(law).table("boxes").orElseThrow())
                .contains(" | In force | Source | Weather |\n")
                .contains("| wet, dry |\n");
        List<TableFile> files = new ArrayList<>(LAW.files());
        files.add(
                Law.file(
                        "tide-tables.csv",
                        """
                        trade,percent,from,to,source
                        Pets|a bar,12,2011-01-04,,A text (from memory)
                        """
                                .getBytes(StandardCharsets.UTF_8)));
        assertThat(pages(Law.of(files)).table("tide-tables"))
                .contains(
                        """
                        ## Tide tables

                        `tide-tables.csv`, 1 row.

                        | Trade | Percent | In force | Source |
                        | --- | --- | --- | --- |
                        | Pets\\|a bar † | 12 | from 2011-01-04 | A text (from memory) |

                        † from memory, ‡ from a secondary source: in whole, or in the part its source names.
                        """);
    }

    private static String withWeather(String text) {
        StringBuilder all = new StringBuilder();
        for (String line : text.lines().toList()) {
            String cell = line.startsWith("treatment,") ? "weather" : "";
            cell = line.startsWith("uk-purchase,") ? "wet|dry" : cell;
            all.append(line).append(',').append(cell).append('\n');
        }
        return all.toString();
    }

    /** Boxes that are not in force as long as the rule say when they are. */
    @Test
    void boxesOfOtherDays() {
        Law law =
                Tables.with(
                        "boxes.csv",
                        text ->
                                text.replaceFirst(
                                        "(uk-sale,6,net,plus,.*)1973-04-01", "$11980-01-01"));
        assertThat(block(pages(law).whole(), "S17a"))
                .contains(
                        """
                        - **Boxes:** adds the VAT to box 1 (the book is on standard accounting or cash accounting); adds the value
                          without VAT to box 6 (the book is on standard accounting or cash accounting, from 1 January 1980); adds the
                          value with VAT to the total flat-rate-turnover (the book is on the flat-rate scheme, from 25 April 2002)
                        """);
    }

    @Test
    void rowsAsJson() {
        assertThat(pages(LAW).json(Optional.of("choices")))
                .hasSize(15)
                .element(1)
                .isEqualTo(
                        "{\"table\":\"choices.csv\",\"row\":3,\"cells\":{\"name\":\"unregistered-supplier-in-box-7\",\"default\":\"yes\",\"values\":\"yes|no\","
                                + "\"question\":\"Is a purchase from a supplier who is not registered for VAT part of box 7?\","
                                + "\"source\":\"No text read settles it: box 7 is the value of all purchases and other inputs, VAT Notice 700/12; derived (from memory)\"},"
                                + "\"unchecked\":[\"from memory\"]}");
        assertThat(pages(LAW).ruleJson("M01").orElseThrow())
                .contains("\"when\":\"compensation\",\"boxes\":\"none\",\"unchecked\":[]}");
        assertThat(pages(LAW).json(Optional.empty()))
                .hasSize(tables().mapToInt(t -> t.rows().size()).sum());
    }

    @Test
    void marksAreShownAsThemselves() {
        assertThat(Markdown.plain("a|b *c* <d> `e` [f] \\"))
                .isEqualTo("a\\|b \\*c\\* \\<d\\> \\`e\\` \\[f\\] \\\\");
        String words = "word ".repeat(21).strip();
        assertThat(Markdown.item(words + " - 14. more"))
                .isEqualTo("- " + words + " - 14.\n  more\n");
    }
}
