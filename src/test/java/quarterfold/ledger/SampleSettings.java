package quarterfold.ledger;

import java.time.LocalDate;
import java.time.Month;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.Map;

/** The settings of an invented seller in Great Britain, and the same with one thing changed. */
public final class SampleSettings {

    public static final Settings GB =
            new Settings(
                    "Fernmoor Crafts",
                    "GB",
                    "GB101747641",
                    LocalDate.of(2003, 1, 1),
                    months("3 6 9 12"),
                    "standard",
                    ZoneId.of("Europe/London"),
                    "GBP",
                    false,
                    false,
                    "GB",
                    Map.of());

    private SampleSettings() {}

    /** Months by their numbers, as {@code periods.csv} has them. */
    public static List<Month> months(String numbers) {
        return Arrays.stream(numbers.split(" ")).map(Integer::valueOf).map(Month::of).toList();
    }

    /** Trades in Northern Ireland where its stock is there. */
    public static Settings established(String country, String stock) {
        return of(country, stock, stock.equals("XI"), Map.of());
    }

    public static Settings choosing(Map<String, String> choices) {
        return of("GB", "GB", false, choices);
    }

    public static Settings of(
            String country, String stock, boolean northernIreland, Map<String, String> choices) {
        return new Settings(
                GB.name(),
                country,
                GB.vatNumber(),
                GB.registeredFrom(),
                GB.periodEnds(),
                GB.scheme(),
                GB.zone(),
                GB.currency(),
                false,
                northernIreland,
                stock,
                choices);
    }

    public static Settings perLine() {
        return with(GB.registeredFrom(), GB.periodEnds(), true);
    }

    public static Settings registered(LocalDate from, String periodEnds) {
        return with(from, months(periodEnds), false);
    }

    private static Settings with(LocalDate from, List<Month> ends, boolean perLine) {
        return new Settings(
                GB.name(),
                GB.country(),
                GB.vatNumber(),
                from,
                ends,
                GB.scheme(),
                GB.zone(),
                GB.currency(),
                perLine,
                false,
                GB.stock(),
                Map.of());
    }
}
