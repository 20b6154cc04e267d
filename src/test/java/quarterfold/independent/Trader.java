package quarterfold.independent;

import java.time.LocalDate;
import java.time.Month;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import quarterfold.ledger.Settings;

/**
 * The business a book is of.
 *
 * @param country where it is established
 * @param stock where its goods are
 * @param northernIreland whether it trades there
 * @param perLine whether VAT inside each price is rounded to the penny
 * @param choices the points it decided otherwise than the defaults, by name
 */
record Trader(
        String country,
        String stock,
        boolean northernIreland,
        boolean perLine,
        Map<String, String> choices,
        LocalDate registered,
        List<Month> periodEnds) {

    static Trader of(Dice dice, LocalDate registered, List<Month> periodEnds) {
        boolean modern = registered.getYear() >= 2021;
        String stock = dice.oneIn(3) && modern ? dice.of("XI", "XI", "US", "DE") : "GB";
        return new Trader(
                dice.oneIn(3) && modern ? dice.of("US", "DE", "CN") : "GB",
                stock,
                stock.equals("XI"),
                dice.oneIn(3),
                Map.of(
                        "deemed-supply-in-box-6", yes(dice),
                        "unregistered-supplier-in-box-7", yes(dice),
                        "blocked-in-box-7", yes(dice),
                        "import-value-from", dice.oneIn(3) ? "supplier-invoice" : "import-entry"),
                registered,
                periodEnds);
    }

    /** A seller in Great Britain with quarters, and these choices beside what most would choose. */
    static Trader gb(LocalDate registered, boolean perLine, Map<String, String> choices) {
        Map<String, String> all =
                new TreeMap<>(
                        Map.of(
                                "deemed-supply-in-box-6", "yes",
                                "unregistered-supplier-in-box-7", "yes",
                                "blocked-in-box-7", "yes",
                                "import-value-from", "import-entry"));
        all.putAll(choices);
        return new Trader("GB", "GB", false, perLine, all, registered, Quarters.ENDS);
    }

    private static String yes(Dice dice) {
        return dice.oneIn(3) ? "no" : "yes";
    }

    boolean isUk() {
        return country.equals("GB");
    }

    boolean stocksAbroad() {
        return stock.equals("US") || stock.equals("DE");
    }

    /** Where goods sold or bought at home are: where its stock is, or Great Britain. */
    String home() {
        return stocksAbroad() ? "GB" : stock;
    }

    boolean chose(String name, String value) {
        return value.equals(choices.get(name));
    }

    Settings settings() {
        return new Settings(
                "Example",
                country,
                "GB101747641",
                registered,
                periodEnds,
                "standard",
                ZoneId.of("Europe/London"),
                "GBP",
                perLine,
                northernIreland,
                stock,
                choices);
    }
}
