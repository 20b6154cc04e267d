package quarterfold.period;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.ledger.FileEntry;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;

/** A settlement whose rows are in several files of one layout. */
class WholeSettlementsTest {
    private static final String ASKED = "S1/payout-does-not-tie/QL-1";

    @TempDir Path folder;
    private TempBook book;
    private int files;

    @BeforeEach
    void open() {
        book =
                new TempBook(
                        folder, SampleSettings.registered(LocalDate.of(2026, 1, 1), "3 6 9 12"));
    }

    @AfterEach
    void close() {
        book.close();
    }

    private static SampleLine row(String kind, String gross) {
        return SampleLine.of(kind).channel("Quaylark", "no").settlement("QL-1").gross(gross);
    }

    /** A file that asks about QL-1. */
    private void asking(SampleLine... lines) {
        try (FileEntry file = book.begin("asking.csv")) {
            file.raise("payout-does-not-tie", "QL-1", "Which rows are missing?");
            TempBook.commit(file, 0, lines);
        }
    }

    private void enter(String layout, SampleLine... lines) {
        files++;
        try (FileEntry file =
                book.ledger().begin("%064x".formatted(1_000 + files), "more.csv", layout)) {
            TempBook.commit(file, 0, lines);
        }
    }

    private boolean isAsked() {
        return TempBook.queries(book.of("2026-09")).contains(ASKED);
    }

    @Test
    void itIsAskedUntilAllRowsAreThere() {
        asking(row("sale", "60"), row("payout", "100"));
        assertThat(isAsked()).isTrue();
        enter("plain-sheet", row("sale", "60"));
        assertThat(isAsked()).isTrue();
        enter("plain-sheet", row("reserve", "20"));
        assertThat(isAsked()).isFalse();
        enter("plain-sheet", row("sale", "0.01"));
        assertThat(isAsked()).isTrue();
    }

    @Test
    void rowsOfAnotherChannelAreOthers() {
        asking(row("sale", "60"), row("payout", "100"));
        enter("another-layout", row("sale", "40"));
        assertThat(isAsked()).isTrue();
        enter("plain-sheet", row("sale", "40"));
        assertThat(isAsked()).isFalse();
    }

    /** Each currency with a payout must tie by itself; one without has none yet. */
    @Test
    void currenciesTieByThemselves() {
        asking(row("sale", "60"), row("payout", "100"));
        enter("plain-sheet", row("sale", "40"), row("sale", "5").currency("EUR"));
        assertThat(isAsked()).isFalse();
        enter("plain-sheet", row("payout", "6").currency("EUR"));
        assertThat(isAsked()).isTrue();
    }

    /** A payout that a column states is no entry, and a payout of nothing pays out nothing. */
    @Test
    void whatTheEntriesCannotTell() {
        asking(row("sale", "60"), row("sale-refund", "60"));
        assertThat(isAsked()).isTrue();
        enter("plain-sheet", row("payout", "0"));
        assertThat(isAsked()).isFalse();
    }

    /** Rows of 90 and a payout row of 90 tie; the 100 that a column states do not. */
    @Test
    void whatAColumnStatesIsAskedThoughTheEntriesTie() {
        try (FileEntry file = book.begin("asking.csv")) {
            file.raise("stated-payout-does-not-tie", "QL-1", "Which rows are missing?");
            TempBook.commit(file, 0, row("sale", "90"), row("payout", "90"));
        }
        assertThat(TempBook.queries(book.of("2026-09")))
                .containsExactly("S1/stated-payout-does-not-tie/QL-1");
    }

    @Test
    void payoutsAlone() {
        asking(row("payout", "100"), row("payout", "-100"));
        assertThat(isAsked()).isTrue();
    }

    /** Another question of the same words stays. */
    @Test
    void otherQuestionsStay() {
        try (FileEntry file = book.begin("asking.csv")) {
            file.raise("rows-repeated", "QL-1", "Are they the same?");
            file.raise("payout-does-not-tie", "QL-1", "Which rows are missing?");
            TempBook.commit(file, 0, row("sale", "100"), row("payout", "100"));
        }
        assertThat(TempBook.queries(book.of("2026-09"))).containsExactly("S1/rows-repeated/QL-1");
    }
}
