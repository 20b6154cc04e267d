package quarterfold.treatment;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import quarterfold.ledger.HeldRate;
import quarterfold.ledger.PublishedRate;
import quarterfold.ledger.Publisher;

/**
 * Rates the tax authority published for calendar months, from public copies of its files
 * (velikodniy/hmrc-rates at af3cfc28db0e04f407367bfad724bcb8cfc24b9f and
 * alicnik/hmrc-exchange-rates at 44661d7fd60b8e8342e73f6c3a1e54f9894ab63b, which agree; secondary
 * source). The days of the European Central Bank are made up.
 */
final class MonthlyRates implements Exchange.Rates {

    /** Month, then EUR, USD, CNY and PLN for one pound. */
    private static final String[] PUBLISHED = {
        "2024-01 1.1567 1.2651 9.0215 5.0170",
        "2026-06 1.1550 1.3399 9.1168 4.9143",
        "2026-07 1.1564 1.3404 9.0598 4.9038",
        "2026-08 1.1719 1.3367 9.0479 5.0757"
    };

    private static final List<String> CURRENCIES = List.of("EUR", "USD", "CNY", "PLN");

    private final List<HeldRate> held = new ArrayList<>();

    MonthlyRates() {
        for (String line : PUBLISHED) {
            String[] cells = line.split(" ", -1);
            YearMonth month = YearMonth.parse(cells[0]);
            for (int i = 0; i < CURRENCIES.size(); i++) {
                add(
                        Publisher.TAX_AUTHORITY,
                        CURRENCIES.get(i),
                        month.atDay(1),
                        month.atEndOfMonth(),
                        cells[i + 1]);
            }
        }
    }

    /** The same with a rate of the European Central Bank, for one euro on a day. */
    MonthlyRates ecb(String currency, String day, String units) {
        add(Publisher.ECB, currency, LocalDate.parse(day), LocalDate.parse(day), units);
        return this;
    }

    private void add(
            Publisher publisher, String currency, LocalDate first, LocalDate last, String units) {
        long id = held.size() + 1L;
        held.add(
                new HeldRate(
                        id,
                        9,
                        new PublishedRate(
                                id + 1, publisher, currency, first, last, new BigDecimal(units))));
    }

    @Override
    public List<HeldRate> of(Publisher publisher, String currency) {
        return held.stream()
                .filter(h -> h.rate().publisher() == publisher)
                .filter(h -> h.rate().currency().equals(currency))
                .toList();
    }
}
