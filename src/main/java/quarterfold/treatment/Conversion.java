package quarterfold.treatment;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import quarterfold.ledger.HeldRate;
import quarterfold.ledger.PublishedRate;
import quarterfold.money.Amount;
import quarterfold.money.ExchangeRate;

/**
 * How an entry in another currency came into the return's.
 *
 * @param currency of the entry, ISO 4217
 * @param home the return's
 * @param money what the entry's money comes to in the return's currency, in the direction of its
 *     kind
 * @param held the published rates that make the rate: one, or of two rates against a third currency
 *     both, the entry's currency first
 */
public record Conversion(String currency, String home, Amount money, List<HeldRate> held) {

    /** Refuses to be without a rate. */
    public Conversion {
        held = List.copyOf(held);
        if (held.isEmpty()) {
            throw new IllegalArgumentException("converted by no rate");
        }
    }

    /** The rate of the held ones. */
    static ExchangeRate rate(String currency, String home, List<HeldRate> held) {
        return new ExchangeRate(units(currency, held), units(home, held));
    }

    private static BigDecimal units(String currency, List<HeldRate> held) {
        return held.stream()
                .map(HeldRate::rate)
                .filter(r -> r.currency().equals(currency))
                .map(PublishedRate::units)
                .findFirst()
                .orElse(BigDecimal.ONE); // the base, of which there is one
    }

    public ExchangeRate rate() {
        return rate(currency, home, held);
    }

    /** The rate in words, such as {@code 1.1719 EUR for 1 GBP}. */
    public String quoted() {
        ExchangeRate rate = rate();
        String worth = plain(rate.worth());
        return plain(rate.units()) + " " + currency + " for " + worth + " " + home;
    }

    private static String plain(BigDecimal number) {
        return number.toPlainString();
    }

    /**
     * Who published the rate, for when, and where it stands, such as {@code the tax authority,
     * 2026-08-01 to 2026-08-31, 2026-08.xml row 12}.
     */
    public String source(Context.Files files) {
        return held.stream().map(h -> source(h, files)).collect(Collectors.joining("; "));
    }

    private String source(HeldRate one, Context.Files files) {
        PublishedRate rate = one.rate();
        String days =
                rate.first().equals(rate.last())
                        ? rate.first().toString()
                        : rate.first() + " to " + rate.last();
        String against =
                rate.publisher().base().equals(home)
                        ? ""
                        : ", %s %s for 1 %s"
                                .formatted(
                                        plain(rate.units()),
                                        rate.currency(),
                                        rate.publisher().base());
        return "%s, %s%s, %s row %d"
                .formatted(
                        rate.publisher().words(),
                        days,
                        against,
                        files.name(one.source()),
                        rate.row());
    }

    /** As a close freezes it, such as {@code 1996.7574 12}. */
    public String text() {
        return money + held.stream().map(h -> " " + h.id()).collect(Collectors.joining());
    }

    /** A held rate by its number. */
    public interface ById {
        Optional<HeldRate> find(long id);
    }

    /** What {@link #text} wrote of an entry; empty where nothing was converted. */
    public static Optional<Conversion> parse(
            String text, String currency, String home, ById rates) {
        if (text.isEmpty()) {
            return Optional.empty();
        }
        String[] parts = text.split(" ", -1);
        List<HeldRate> held =
                Arrays.stream(parts)
                        .skip(1)
                        .map(id -> rates.find(Long.parseLong(id)).orElseThrow())
                        .toList();
        return Optional.of(new Conversion(currency, home, Amount.of(parts[0]), held));
    }
}
