package quarterfold.ledger;

import java.time.LocalDate;
import java.time.Month;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What a book says about its business: the contents of {@code book.yaml}.
 *
 * @param country where the business is established, ISO 3166
 * @param vatNumber as written, such as {@code GB101747696}
 * @param periods the registration and its return periods
 * @param schemes the accounting schemes by their first days
 * @param zone dates are days in this zone
 * @param currency of the return, ISO 4217
 * @param roundingPerLine whether the VAT in each sale is rounded to the penny, rather than each box
 * @param northernIreland whether the business trades in goods in or through Northern Ireland
 * @param stock where goods start when a file does not say, ISO 3166 or {@code XI}
 * @param paysBy how the VAT of a return is paid
 * @param choices the accountant's choices where sources leave a point open, by name, such as {@code
 *     deemed-supply-in-box-6: yes}; every name is in {@code templates/law/gb/choices.csv}
 */
public record Settings(
        String name,
        String country,
        String vatNumber,
        Periods periods,
        Schemes schemes,
        ZoneId zone,
        String currency,
        boolean roundingPerLine,
        boolean northernIreland,
        String stock,
        PaymentMethod paysBy,
        Map<String, String> choices) {

    public Settings {
        choices = Map.copyOf(choices);
    }

    /** A business with one scheme, no period but those its period ends give, and the defaults. */
    public Settings(
            String name,
            String country,
            String vatNumber,
            LocalDate registeredFrom,
            List<Month> periodEnds,
            String scheme,
            ZoneId zone,
            String currency,
            boolean roundingPerLine,
            boolean northernIreland,
            String stock,
            Map<String, String> choices) {
        this(
                name,
                country,
                vatNumber,
                Periods.of(registeredFrom, periodEnds),
                Schemes.of(scheme, Optional.empty()),
                zone,
                currency,
                roundingPerLine,
                northernIreland,
                stock,
                PaymentMethod.FASTER_PAYMENT,
                choices);
    }

    public LocalDate registeredFrom() {
        return periods.registeredFrom();
    }

    /** The last day of the registration, where it was cancelled. */
    public Optional<LocalDate> registeredTo() {
        return periods.registeredTo();
    }

    /** The months periods end in, rising. */
    public List<Month> periodEnds() {
        return periods.ends();
    }

    /** The scheme on the day: {@code standard}, {@code cash} or {@code flat-rate}. */
    public String schemeOn(LocalDate day) {
        return schemes.on(day);
    }

    /** The trade sector's id in {@code flat-rates.csv}; stated where a scheme is flat-rate. */
    public Optional<String> flatRateSector() {
        return schemes.flatRateSector();
    }
}
