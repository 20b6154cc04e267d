package quarterfold.period;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.ledger.Periods;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;
import quarterfold.ledger.Settings;
import quarterfold.treatment.Treated;

/** The story of an entry over all periods, one entry at a time or all in a row. */
class StoriesTest {

    @TempDir private Path folder;

    private TempBook book(Settings settings) {
        return new TempBook(folder, settings);
    }

    private static SampleLine sale(String day, String gross) {
        return SampleLine.of("sale").on(day).gross(gross);
    }

    /** Each occasion with the period that takes it up; the same either way it is asked for. */
    private static List<String> story(TempBook book, long number) {
        Returns returns = book.returns();
        List<String> one = returns.treated(number).stream().map(t -> told(returns, t)).toList();
        List<Treated> all = new ArrayList<>();
        returns.forEachTreated(all::add);
        assertThat(
                        all.stream()
                                .filter(t -> t.entry().number() == number)
                                .map(t -> told(returns, t)))
                .as("among all entries")
                .isEqualTo(one);
        return one;
    }

    private static String told(Returns returns, Treated t) {
        return "%s %s %s %s in %s"
                .formatted(
                        t.occasion().day(),
                        t.treatment(),
                        t.takenUp().code(),
                        new TreeMap<>(t.boxes()),
                        returns.takenUpIn(t).map(p -> p.name().toString()).orElse("none"));
    }

    /** VAT Regulations 1995 reg 34: late, then in the return that put it right. */
    @Test
    void aLateEntryHasOnePlace() {
        try (TempBook book = book(SampleSettings.GB)) {
            book.enter("a.csv", sale("2026-02-01", "12"));
            book.close("2026-03");
            book.enter("b.csv", sale("2026-02-02", "120"), sale("2026-05-02", "60"));
            assertThat(story(book, 1))
                    .containsExactly(
                            "2026-02-01 uk-sale in-its-period {1=2.00, 6=10.00} in 2026-03");
            assertThat(story(book, 2))
                    .containsExactly("2026-02-02 uk-sale error {1=20.00} in 2026-06");
            assertThat(story(book, 3))
                    .containsExactly(
                            "2026-05-02 uk-sale in-its-period {1=10.00, 6=50.00} in 2026-06");
            book.close("2026-06");
            assertThat(story(book, 2))
                    .containsExactly("2026-02-02 uk-sale error {1=20.00} in 2026-06");
            assertThat(book.returns().treated(4)).isEmpty();
        }
    }

    @Test
    void aCorrectionIsToldAfterWhatWasClosed() {
        try (TempBook book = book(SampleSettings.GB)) {
            book.enter("a.csv", sale("2026-02-01", "120"));
            book.close("2026-03");
            book.decide("entry", "1", "treat-as", "exempt-sale");
            assertThat(story(book, 1))
                    .containsExactly(
                            "2026-02-01 uk-sale in-its-period {1=20.00, 6=100.00} in 2026-03",
                            "2026-06-30 exempt-sale error {1=-20.00} in 2026-06");
        }
    }

    /** HMRC manual VEXP30300: the time for evidence of export runs out in a later period. */
    @Test
    void eachOccasionHasItsOwnPeriod() {
        try (TempBook book = book(SampleSettings.GB)) {
            book.enter("a.csv", sale("2026-03-10", "600").goods("", "US"));
            book.close("2026-03");
            book.close("2026-06");
            assertThat(story(book, 1))
                    .containsExactly(
                            "2026-03-10 export-awaited in-its-period {6=600.00} in 2026-03",
                            "2026-06-10 export-overdue in-its-period {1=100.00, 6=-100.00} in 2026-06");
        }
    }

    /** VAT Regulations 1995 reg 57: one payment is put right, the next is still in its period. */
    @Test
    void aCorrectionHidesNoOtherOccasion() {
        try (TempBook book = book(SampleSettings.scheme("cash", ""))) {
            book.enter(
                    "a.csv",
                    sale("2026-02-01", "1200").document("INV-1").party("Customer", "GB", ""),
                    received("2026-03-01"),
                    received("2026-05-01"));
            book.close("2026-03");
            book.decide("entry", "1", "treat-as", "exempt-sale");
            assertThat(story(book, 1))
                    .containsExactly(
                            "2026-02-01 awaiting-payment in-its-period {} in 2026-03",
                            "2026-03-01 uk-sale in-its-period {1=100.00, 6=500.00} in 2026-03",
                            "2026-06-30 exempt-sale error {1=-100.00} in 2026-06",
                            "2026-05-01 exempt-sale in-its-period {6=600.00, exempt-supplies=600.00} in 2026-06");
        }
    }

    private static SampleLine received(String day) {
        return SampleLine.of("customer-payment")
                .on(day)
                .gross("600")
                .document("INV-1")
                .party("Customer", "GB", "");
    }

    private static Settings endingInAugust() {
        Periods periods = SampleSettings.GB.periods();
        return SampleSettings.of(
                SampleSettings.GB,
                new Periods(
                        periods.registeredFrom(),
                        Optional.of(LocalDate.of(2026, 8, 31)),
                        periods.ends(),
                        List.of(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty()),
                SampleSettings.GB.schemes());
    }

    /** No return is left to take up what comes after the last one: it adds to no box. */
    @Test
    void whatComesAfterTheLastReturn() {
        try (TempBook book = book(endingInAugust())) {
            book.enter("a.csv", sale("2026-08-01", "12"));
            book.close("2026-08");
            book.enter("b.csv", sale("2026-08-02", "120"), sale("2026-09-01", "120"));
            assertThat(book.returns().takesUpErrors()).isEmpty();
            assertThat(story(book, 2)).containsExactly("2026-08-02 uk-sale nowhere {} in none");
            assertThat(story(book, 3)).hasSize(1).allMatch(s -> s.endsWith(" nowhere {} in none"));
        }
    }

    /** An entry after the registration is asked about once, in the earliest period that is open. */
    @Test
    void whatIsAfterTheRegistrationIsAskedOnce() {
        try (TempBook book = book(endingInAugust())) {
            book.enter(
                    "a.csv",
                    sale("2026-05-01", "12"),
                    sale("2026-08-01", "12"),
                    sale("2026-09-01", "120"));
            List<String> asked = TempBook.queries(book.of("2026-06"));
            assertThat(asked).hasSize(1).allMatch(q -> q.startsWith("E3/"));
            assertThat(book.of("2026-08").queries()).isEmpty();
            book.close("2026-06");
            assertThat(TempBook.queries(book.of("2026-08"))).isEqualTo(asked);
        }
    }
}
