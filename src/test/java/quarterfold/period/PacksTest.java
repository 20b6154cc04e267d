package quarterfold.period;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.ledger.Attachment;
import quarterfold.ledger.FileEntry;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;
import quarterfold.ledger.Source;
import quarterfold.money.Amount;

/** The documents behind a period's papers, open and closed. */
class PacksTest {

    @TempDir private Path folder;
    private TempBook book;

    @BeforeEach
    void open() {
        book = new TempBook(folder, SampleSettings.GB);
    }

    @AfterEach
    void close() {
        book.close();
    }

    private static SampleLine sale(String day) {
        return SampleLine.of("sale").on(day).gross("120");
    }

    private Pack pack(String period) {
        return book.returns().pack(book.period(period));
    }

    /**
     * A receipt kept with a row is a paper of the period the row is in, before the close and after.
     */
    @Test
    void sourcesAndAttachments() {
        book.enter("may.csv", sale("2026-05-01"));
        try (FileEntry file = book.begin("august.csv")) {
            file.attach(2, "receipt.jpg", "ab".repeat(32));
            TempBook.commit(file, 0, sale("2026-08-01"));
        }
        Attachment receipt = new Attachment(2, 2, "receipt.jpg", "ab".repeat(32));
        assertPapers(pack("2026-06"), pack("2026-09"), receipt);
        book.close("2026-06");
        book.close("2026-09");
        assertPapers(pack("2026-06"), pack("2026-09"), receipt);
    }

    private static void assertPapers(Pack june, Pack september, Attachment receipt) {
        assertThat(june.attachments()).isEmpty();
        assertThat(september.attachments()).containsExactly(receipt);
        for (Pack pack : List.of(june, september)) {
            assertThat(pack.source(1)).map(Source::name).contains("may.csv");
            assertThat(pack.source(2)).map(Source::name).contains("august.csv");
            assertThat(pack.source(3)).isEmpty();
        }
    }

    /** Of late files those alone that the return takes something up from. */
    @Test
    void filesOfWhatIsTakenUp() {
        book.enter("a.csv", sale("2026-02-01"));
        book.close("2026-03");
        SampleLine payout = SampleLine.of("payout").on("2026-02-02").gross("50");
        book.enter("before.csv", payout, payout);
        book.enter("late.csv", sale("2026-02-03"));
        book.enter("after.csv", payout, payout);
        assertThat(pack("2026-06").sources()).extracting(Source::name).containsExactly("late.csv");
        book.enter("last.csv", payout, sale("2026-02-04"));
        assertThat(pack("2026-06").sources())
                .extracting(Source::name)
                .containsExactly("late.csv", "last.csv");
        book.close("2026-06");
        assertThat(pack("2026-06").sources())
                .extracting(Source::name)
                .containsExactly("late.csv", "last.csv");
    }

    /** What a late statement's fees lack is asked where they are taken up. */
    @Test
    void lateFeesWithoutAnInvoice() {
        book.enter("a.csv", sale("2026-02-01"));
        book.close("2026-03");
        book.enter(
                "late.csv",
                SampleLine.of("fee")
                        .on("2026-02-05")
                        .gross("30")
                        .channel("Quaylark", "no")
                        .settlement("ST-1"));
        assertThat(book.of("2026-06").queries())
                .filteredOn(q -> q.id().contains("Quaylark"))
                .extracting(q -> q.id() + " " + q.money())
                .containsExactly("2026-06/Quaylark/fees-without-invoice 30.00");
    }

    /** VATA 1994 s.26B: a figure beside the entries has its line of the account by its own row. */
    @Test
    void theAccountsLineOfAnAdjustment() {
        try (TempBook flat =
                new TempBook(folder.resolve("flat"), SampleSettings.scheme("flat-rate", "044"))) {
            flat.enter("quarter.csv", SampleLine.of("sale").gross("10000"));
            Pack pack = flat.returns().pack(flat.period("2026-09"));
            VatAccount account = VatAccount.of(pack);
            assertThat(account.payable().lines())
                    .extracting(l -> l.line().account() + " " + l.entries() + " " + l.adjustments())
                    .containsExactly("output-tax 0 1");
            assertThat(account.payable().lines().get(0).source()).isNotEmpty();
            assertThat(account.payable().total()).isGreaterThan(Amount.ZERO);
        }
    }
}
