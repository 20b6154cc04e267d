package quarterfold.papers;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
import quarterfold.ledger.HeldRate;
import quarterfold.ledger.PublishedRate;
import quarterfold.ledger.Source;
import quarterfold.money.Amount;
import quarterfold.period.Pack;

/**
 * The exchange rates that brought entries of the period into sterling, each with the file and row
 * it stands in. A period all in sterling has no such sheet.
 */
final class ExchangeSheet {

    private ExchangeSheet() {}

    /** A rate and how many entries it was used for. */
    private record Used(HeldRate held, long entries, Pack pack) {
        PublishedRate rate() {
            return held.rate();
        }

        private String ofFile(Function<Source, String> what) {
            return pack.source(held.source()).map(what).orElse("");
        }
    }

    static void write(Sheets sheets, Pack pack, Tally tally) {
        Map<HeldRate, Long> rates = tally.rates();
        if (rates.isEmpty()) {
            return;
        }
        List<Column<Used>> columns =
                List.of(
                        Column.text("Currency", 9, u -> u.rate().currency()),
                        Column.text("Units", 14, u -> u.rate().units().toPlainString()),
                        Column.text("For one", 8, u -> u.rate().publisher().base()),
                        Column.text("Published by", 20, u -> u.rate().publisher().words()),
                        Column.of("Holds from", 14, u -> new Value.Day(u.rate().first())),
                        Column.of("Holds to", 14, u -> new Value.Day(u.rate().last())),
                        Column.count("Entries", 10, Used::entries),
                        Column.whole("Row in file", 10, u -> u.rate().row()),
                        Column.text("Source file", 40, u -> u.ofFile(Source::name)),
                        Column.text("SHA-256 of the file", 68, u -> u.ofFile(Source::sha256)));
        ListSheet<Used> list =
                new ListSheet<>(
                        sheets,
                        new ListSheet.Heading(
                                "Exchange rates",
                                "An amount is divided by the units of its currency; where they are"
                                        + " for one of a third currency, it is also multiplied by"
                                        + " the units of sterling.",
                                "No rate was used.",
                                6),
                        columns,
                        rates.size(),
                        (page, column) -> Amount.ZERO);
        rates.forEach((held, entries) -> list.add(new Used(held, entries, pack)));
    }
}
