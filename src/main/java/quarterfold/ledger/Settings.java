package quarterfold.ledger;

import java.time.LocalDate;
import java.time.Month;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;

/**
 * What a book says about its business: the contents of {@code book.yaml}.
 *
 * @param country where the business is established, ISO 3166
 * @param vatNumber as written, such as {@code GB101747696}
 * @param periodEnds the months return periods end in, rising
 * @param scheme {@code standard} for now
 * @param zone dates are days in this zone
 * @param currency of the return, ISO 4217
 * @param roundingPerLine whether the VAT in each sale is rounded to the penny, rather than each box
 * @param northernIreland whether the business trades in goods in or through Northern Ireland
 * @param stock where goods start when a file does not say, ISO 3166 or {@code XI}
 * @param choices the accountant's choices where sources leave a point open, by name, such as {@code
 *     deemed-supply-in-box-6: yes}; every name is in {@code templates/law/gb/choices.csv}
 */
public record Settings(
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

    public Settings {
        periodEnds = List.copyOf(periodEnds);
        choices = Map.copyOf(choices);
    }
}
