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

    public static Settings established(String country, String stock) {
        return with(GB, country, stock, GB.periodEnds(), GB.registeredFrom(), false, Map.of());
    }

    public static Settings choosing(Map<String, String> choices) {
        return with(GB, "GB", "GB", GB.periodEnds(), GB.registeredFrom(), false, choices);
    }

    public static Settings perLine() {
        return with(GB, "GB", "GB", GB.periodEnds(), GB.registeredFrom(), true, Map.of());
    }

    public static Settings registered(LocalDate from, String periodEnds) {
        return with(GB, "GB", "GB", months(periodEnds), from, false, Map.of());
    }

    public static Settings with(String country, String stock, Map<String, String> choices) {
        return with(GB, country, stock, GB.periodEnds(), GB.registeredFrom(), false, choices);
    }

    private static Settings with(
            Settings base,
            String country,
            String stock,
            List<Month> ends,
            LocalDate from,
            boolean perLine,
            Map<String, String> choices) {
        return new Settings(
                base.name(),
                country,
                base.vatNumber(),
                from,
                ends,
                base.scheme(),
                base.zone(),
                base.currency(),
                perLine,
                stock.equals("XI"),
                stock,
                choices);
    }
}
