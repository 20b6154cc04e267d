package quarterfold.law;

import java.time.LocalDate;
import java.util.Optional;
import quarterfold.money.Percent;

/** The rates of VAT: {@code rates.csv}. */
public final class Rates {

    private final Keyed<Percent> rates;

    Rates(TableFile file) {
        rates =
                Keyed.read(
                        file,
                        "category",
                        row -> row.parse("percent", Percent::of, "a percentage such as 17.5"));
    }

    /** The rate of a category, such as {@code standard}, on the day. */
    public Optional<Dated<Percent>> on(String category, LocalDate day) {
        return rates.on(category, day);
    }

    /** The category that has this rate on the day: the first of the table where several do. */
    public Optional<String> category(Percent percent, LocalDate day) {
        return rates.names().stream()
                .filter(
                        name ->
                                rates.on(name, day)
                                        .filter(d -> d.value().equals(percent))
                                        .isPresent())
                .findFirst();
    }

    /**
     * The category that has or once had this rate, not after the day: a refund takes the rate of
     * the sale it undoes.
     */
    public Optional<String> categoryUpTo(Percent percent, LocalDate day) {
        return category(percent, day)
                .or(
                        () ->
                                rates.names().stream()
                                        .filter(
                                                name ->
                                                        rates.all(name).stream()
                                                                .anyMatch(
                                                                        d ->
                                                                                d.value()
                                                                                                .equals(
                                                                                                        percent)
                                                                                        && !d.from()
                                                                                                .isAfter(
                                                                                                        day)))
                                        .findFirst());
    }

    Keyed<Percent> keyed() {
        return rates;
    }
}
