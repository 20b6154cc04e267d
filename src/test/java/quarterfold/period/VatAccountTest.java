package quarterfold.period;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import quarterfold.ledger.Particular;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;
import quarterfold.money.Amount;

/** VAT Regulations 1995 reg 32: the account by portion and line, equal to the boxes by reg 39. */
class VatAccountTest {

    private static final List<String> RATES = List.of("20", "5", "0", "exempt");
    private static final List<String> EVIDENCE = List.of("invoice", "simplified", "missing");
    private static final List<String> CATEGORIES =
            List.of("stock", "car-hire", "client-entertaining");

    @TempDir private Path folder;

    /** Reg 32(3) and (4): each line by its paragraph. */
    @Test
    void linesOfAQuarter() {
        try (TempBook book = book("account")) {
            book.enter(
                    "quarter.csv",
                    SampleLine.of("sale").on("2026-07-01").gross("120"),
                    SampleLine.of("sale-refund").on("2026-07-02").gross("12"),
                    SampleLine.of("fee")
                            .on("2026-07-31")
                            .gross("50")
                            .party("Adverts Abroad", "IE", "")
                            .evidence("invoice"),
                    SampleLine.of("import-vat-postponed")
                            .on("2026-08-03")
                            .vat("30")
                            .evidence("postponed-statement"),
                    SampleLine.of("import-vat-paid")
                            .on("2026-08-04")
                            .vat("7")
                            .evidence("import-certificate"),
                    purchase("60", "10", "stock", "invoice").on("2026-08-01"));
            VatAccount account = VatAccount.of(book.returns().pack(book.period("2026-09")));
            assertThat(lines(account.payable()))
                    .containsExactly(
                            "output-tax 2 18.00 VAT Regulations 1995 reg 32(3)(a)",
                            "reverse-charge 1 10.00 VAT Regulations 1995 reg 32(3)(a); VATA 1994 s.8: treated as the customer's own supply",
                            "import-vat-postponed 1 30.00 VAT Regulations 1995 reg 32(3)(d); the paragraph is our reading (secondary source)");
            assertThat(lines(account.allowable()))
                    .containsExactly(
                            "input-tax 1 10.00 VAT Regulations 1995 reg 32(4)(a)",
                            "reverse-charge 1 10.00 VAT Regulations 1995 reg 32(4)(a)",
                            "import-vat-paid 1 7.00 VAT Regulations 1995 reg 32(4)(a); VATA 1994 s.24(1)(c)",
                            "import-vat-postponed 1 30.00 VAT Regulations 1995 reg 32(4)(a); VATA 1994 s.24(1)(c)");
            assertThat(account.payable().boxes()).containsExactly("1", "2");
            assertThat(account.allowable().boxes()).containsExactly("4");
            assertThat(account.payable().total()).isEqualTo(Amount.of("58"));
            assertThat(account.allowable().total()).isEqualTo(Amount.of("57"));
        }
    }

    /** VATA 1994 s.26B: under the flat rate the VAT due is a figure beside the entries. */
    @Test
    void whatNoEntryMakesIsInTheAccount() {
        try (TempBook book =
                new TempBook(folder.resolve("flat"), SampleSettings.scheme("flat-rate", "044"))) {
            book.enter("quarter.csv", SampleLine.of("sale").on("2026-07-01").gross("10000"));
            VatAccount account = VatAccount.of(book.returns().pack(book.period("2026-09")));
            assertThat(account.payable().total()).isEqualTo(account.vatReturn().box("1").exact());
            assertThat(account.payable().lines())
                    .filteredOn(l -> l.adjustments() > 0)
                    .extracting(VatAccount.Line::adjustments, VatAccount.Line::entries)
                    .containsExactly(tuple(1L, 0L));
            assertThat(account.vatReturn().box("1").exact().isZero()).isFalse();
        }
    }

    /** Reg 39(2) and (3): whatever the book, the portions are boxes 1 and 2, and box 4. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void portionsAreTheBoxes(long seed) {
        Random random = new Random(seed);
        List<SampleLine> lines = new ArrayList<>();
        for (int i = 0; i < 120; i++) {
            lines.add(
                    line(random)
                            .on(LocalDate.of(2026, 7, 1).plusDays(random.nextInt(92)).toString()));
        }
        try (TempBook book = book("seed" + seed)) {
            book.enter("random.csv", lines.toArray(SampleLine[]::new));
            equal(VatAccount.of(book.returns().pack(book.period("2026-09"))));
            book.close("2026-09");
            VatAccount closed = VatAccount.of(book.returns().pack(book.period("2026-09")));
            assertThat(closed.vatReturn().status()).isEqualTo(VatReturn.Status.CLOSED);
            equal(closed);
        }
    }

    private static void equal(VatAccount account) {
        VatReturn vatReturn = account.vatReturn();
        assertThat(account.payable().total())
                .isEqualTo(vatReturn.box("1").exact().plus(vatReturn.box("2").exact()));
        assertThat(account.allowable().total()).isEqualTo(vatReturn.box("4").exact());
        assertThat(vatReturn.box("1").exact().isZero()).as("something is in it").isFalse();
        assertThat(vatReturn.box("4").exact().isZero()).as("something is in it").isFalse();
        assertThat(lines(account.payable()))
                .as("every treatment that feeds a box has a line of its own")
                .noneMatch(l -> l.startsWith("adjustment"));
        assertThat(lines(account.allowable())).noneMatch(l -> l.startsWith("adjustment"));
    }

    private static SampleLine line(Random random) {
        String gross = Amount.ofPennies(1 + random.nextInt(50_000)).toString();
        return switch (random.nextInt(8)) {
            case 0 -> SampleLine.of("sale-refund").gross(gross);
            case 1 ->
                    SampleLine.of("fee")
                            .gross(gross)
                            .particular(Particular.USE, "taxable")
                            .party("Abroad", random.nextBoolean() ? "IE" : "US", "")
                            .evidence(pick(EVIDENCE, random));
            case 2 ->
                    SampleLine.of("import-vat-postponed")
                            .vat(gross)
                            .particular(Particular.USE, "taxable")
                            .evidence(random.nextBoolean() ? "postponed-statement" : "missing");
            case 3 ->
                    SampleLine.of("import-vat-paid")
                            .vat(gross)
                            .particular(Particular.USE, "taxable")
                            .evidence(random.nextBoolean() ? "import-certificate" : "missing");
            case 4, 5 -> purchase(gross, "", pick(CATEGORIES, random), pick(EVIDENCE, random));
            default -> SampleLine.of("sale").gross(gross).rate(pick(RATES, random));
        };
    }

    private static SampleLine purchase(String gross, String vat, String category, String evidence) {
        SampleLine line =
                SampleLine.of("purchase")
                        .gross(gross)
                        .particular(Particular.USE, "taxable")
                        .rate("20")
                        .category(category)
                        .party("Fernmoor Pottery Ltd", "GB", "GB101747696")
                        .evidence(evidence);
        return vat.isEmpty() ? line : line.vat(vat);
    }

    private static String pick(List<String> words, Random random) {
        return words.get(random.nextInt(words.size()));
    }

    private static List<String> lines(VatAccount.Half half) {
        return half.lines().stream()
                .map(
                        l ->
                                "%s %d %s %s"
                                        .formatted(
                                                l.line().account(),
                                                l.entries(),
                                                l.amount(),
                                                l.source()))
                .toList();
    }

    private TempBook book(String name) {
        return new TempBook(
                folder.resolve(name),
                SampleSettings.registered(LocalDate.of(2026, 1, 1), "3 6 9 12"));
    }
}
