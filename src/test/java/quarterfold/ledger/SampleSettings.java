package quarterfold.ledger;

import java.time.LocalDate;
import java.time.Month;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;

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
                GB.periods(),
                GB.schemes(),
                GB.zone(),
                GB.currency(),
                false,
                northernIreland,
                stock,
                GB.paysBy(),
                choices);
    }

    public static Settings perLine() {
        return with(GB.periods(), GB.schemes(), true, GB.paysBy());
    }

    public static Settings registered(LocalDate from, String periodEnds) {
        return on(Periods.of(from, months(periodEnds)));
    }

    public static Settings on(Periods periods) {
        return with(periods, GB.schemes(), false, GB.paysBy());
    }

    /** One scheme from the first day on; the sector of the flat rate, or an empty text. */
    public static Settings scheme(String word, String sector) {
        return on(Schemes.of(word, Optional.of(sector).filter(s -> !s.isEmpty())));
    }

    public static Settings on(Schemes schemes) {
        return with(GB.periods(), schemes, false, GB.paysBy());
    }

    public static Settings on(Periods periods, Schemes schemes) {
        return with(periods, schemes, false, GB.paysBy());
    }

    public static Settings paying(Periods periods, PaymentMethod paysBy) {
        return with(periods, GB.schemes(), false, paysBy);
    }

    /** The same business under other periods and schemes. */
    public static Settings of(Settings settings, Periods periods, Schemes schemes) {
        return new Settings(
                settings.name(),
                settings.country(),
                settings.vatNumber(),
                periods,
                schemes,
                settings.zone(),
                settings.currency(),
                settings.roundingPerLine(),
                settings.northernIreland(),
                settings.stock(),
                settings.paysBy(),
                settings.choices());
    }

    private static Settings with(
            Periods periods, Schemes schemes, boolean perLine, PaymentMethod paysBy) {
        return new Settings(
                GB.name(),
                GB.country(),
                GB.vatNumber(),
                periods,
                schemes,
                GB.zone(),
                GB.currency(),
                perLine,
                false,
                GB.stock(),
                paysBy,
                Map.of());
    }
}
