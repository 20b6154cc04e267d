package quarterfold.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.money.Amount;

/** Entries found by their profiles, wherever they are. */
class EntrySearchTest {

    @TempDir Path folder;

    private Ledger ledger;

    @BeforeEach
    void open() {
        ledger = Book.create(folder, SampleSettings.GB).ledger();
        enter(
                "a",
                SampleLine.of("sale").on("2026-01-31").gross("10").paid("2026-03-01"),
                SampleLine.of("expense").on("2026-02-01").gross("20"));
        enter(
                "b",
                SampleLine.of("sale").on("2026-02-28").gross("30").paid("2026-03-31"),
                SampleLine.of("sale").on("2026-03-01").gross("40").paid("2026-04-01"));
    }

    @AfterEach
    void close() {
        ledger.close();
    }

    private void enter(String name, SampleLine... lines) {
        try (FileEntry entry = ledger.begin(name.repeat(64), name, "plain-sheet")) {
            Amount money = Amount.ZERO;
            for (SampleLine sample : lines) {
                Line line = sample.line(2);
                entry.add(line);
                money = money.plus(line.signedMoney());
            }
            entry.commit(lines.length, lines.length, money, money);
        }
    }

    private static Predicate<Profile> kind(Kind kind) {
        return profile -> profile.kind() == kind;
    }

    @Test
    void byProfileOverEverySource() {
        List<Long> found = new ArrayList<>();
        ledger.search().forEach(kind(Kind.SALE), e -> found.add(e.number()));
        assertThat(found).containsExactly(1L, 3L, 4L);
    }

    @Test
    void noneOfTheProfile() {
        ledger.search().forEach(kind(Kind.PAYOUT), e -> assertThat(e).isNull());
        assertThat(ledger.search().hasKind(Kind.PAYOUT)).isFalse();
    }

    @Test
    void betweenTwoDaysBothIncluded() {
        List<Long> found = new ArrayList<>();
        ledger.search()
                .forEach(
                        LocalDate.of(2026, 1, 31),
                        LocalDate.of(2026, 2, 28),
                        kind(Kind.SALE),
                        e -> found.add(e.number()));
        assertThat(found).containsExactly(1L, 3L);
    }

    @Test
    void byTheDayPaidBothIncluded() {
        List<Long> found = new ArrayList<>();
        ledger.search()
                .forEachPaid(
                        LocalDate.of(2026, 3, 1),
                        LocalDate.of(2026, 3, 31),
                        kind(Kind.SALE),
                        e -> found.add(e.number()));
        assertThat(found).containsExactly(1L, 3L);
    }

    /** A statement's lines all state their account, and nothing by which an occasion moves. */
    @Test
    void anAccountAloneIsNotLookedAt() {
        try (FileEntry file = ledger.begin("c".repeat(64), "bank.csv", "plain-sheet")) {
            SampleLine line = SampleLine.of("bank-line").gross("1");
            file.add(line.particular(Particular.ACCOUNT, "12345678").line(2));
            file.add(line.particular(Particular.HELD, "2026-10-08").line(3));
            file.add(
                    SampleLine.of("expense").gross("1").particular(Particular.USE, "both").line(4));
            file.commit(3, 3, Amount.of("1"), Amount.of("1"));
        }
        List<String> found = new ArrayList<>();
        ledger.forEachWithParticulars(e -> found.add(e.line().particulars().text()));
        assertThat(found).containsExactly("held=2026-10-08 account=12345678", "use=both");
    }
}
