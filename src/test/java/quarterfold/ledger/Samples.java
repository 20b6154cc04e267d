package quarterfold.ledger;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.time.Month;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import quarterfold.money.Amount;
import quarterfold.money.Percent;

/** Books, lines and closes of an invented business, for the tests of the ledger. */
final class Samples {
    static final Settings SETTINGS =
            new Settings(
                    "Fernmoor Crafts",
                    "GB",
                    "GB101747696",
                    LocalDate.of(2024, 1, 1),
                    List.of(Month.MARCH, Month.JUNE, Month.SEPTEMBER, Month.DECEMBER),
                    "standard",
                    ZoneId.of("Europe/London"),
                    "GBP",
                    false,
                    false,
                    "GB",
                    Map.of());

    static final Profile SALE = Profile.of(Kind.SALE, "GBP");

    /** A line in which every field is stated. */
    static final Line FULL =
            new Line(
                    7,
                    LocalDate.of(2026, 9, 30),
                    new Profile(
                            Kind.PURCHASE_CREDIT,
                            "EUR",
                            new StatedRate("17.5"),
                            "Østgård & Søn",
                            "DK",
                            "DK12345674",
                            "materials",
                            "DK",
                            "XI",
                            Customer.BUSINESS,
                            "XI110305878",
                            "Quaylark",
                            ChannelCollects.UNCLEAR,
                            "QL-0003",
                            Evidence.SELF_BILLED,
                            Percent.of("62.5")),
                    new Item("KETTLE-1", "A kettle, \"small\"; 2 l – blå 🫖"),
                    "INV-17",
                    "Q-100-7",
                    new Amounts(
                            Optional.of(Amount.of("100.1234")),
                            Optional.of(Amount.of("-0.0001")),
                            Optional.of(Amount.of("120"))),
                    Optional.of(LocalDate.of(1969, 12, 31)),
                    Particulars.NONE
                            .with(Particular.HELD, "2026-10-08")
                            .with(Particular.COST, "12.50")
                            .with(Particular.USE, "both"),
                    "1.234,56",
                    "Posted: yes\nRef: =1+1");

    /** A rate the tax authority published (secondary source: public copy of its file). */
    static final PublishedRate RATE =
            new PublishedRate(
                    12,
                    Publisher.TAX_AUTHORITY,
                    "EUR",
                    LocalDate.of(2026, 8, 1),
                    LocalDate.of(2026, 8, 31),
                    new BigDecimal("1.1719"));

    private Samples() {}

    static Ledger newLedger(Path folder) {
        return Book.create(folder.resolve("book"), SETTINGS).ledger();
    }

    /** The ledger of {@link #newLedger} again, waiting only {@code wait} for a lock. */
    static Ledger again(Path folder, Duration wait) {
        return Ledger.open(folder.resolve("book").resolve(Book.LEDGER), wait);
    }

    static Line sale(long row, LocalDate day, String gross) {
        return new Line(
                row,
                day,
                SALE,
                Item.NONE,
                "",
                "",
                Amounts.ofGross(Amount.of(gross)),
                Optional.empty(),
                "",
                "");
    }

    /** Enters lines as one file with an invented digest. */
    static Source enter(Ledger ledger, String sha256, Line... lines) {
        try (FileEntry file = ledger.begin(sha256, sha256 + ".csv", "plain-sheet")) {
            Amount money = Amount.ZERO;
            for (Line line : lines) {
                file.add(line);
                money = money.plus(line.signedMoney());
            }
            return file.commit(lines.length, lines.length, money, money);
        }
    }

    static List<Entry> entries(Ledger ledger) {
        List<Entry> entries = new ArrayList<>();
        ledger.forEach(entries::add);
        return entries;
    }

    static List<Long> numbers(List<Entry> entries) {
        return entries.stream().map(Entry::number).toList();
    }
}
