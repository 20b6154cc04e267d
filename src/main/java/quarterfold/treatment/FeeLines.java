package quarterfold.treatment;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.stream.Stream;
import quarterfold.law.Dated;
import quarterfold.law.Law;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Evidence;
import quarterfold.ledger.Kind;

/**
 * Fees that are claimed line by line on settlements, since the lines state evidence and VAT, and
 * the channel's invoice for the same fees beside them.
 *
 * <p>Input tax is never deducted twice: VAT Regulations 1995 reg 29(4). A settlement's line without
 * evidence is money only and is none of these. An invoice is looked at with the lines of the days
 * up to it: {@code fee-invoice-lines} of {@code limits.csv}.
 */
final class FeeLines {
    private static final String DAYS = "fee-invoice-lines";

    private final Law law;
    private final Map<Fees, NavigableMap<LocalDate, Long>> lines = new HashMap<>();

    /** Fees or credits of a channel. */
    private record Fees(String channel, Kind kind) {}

    FeeLines(Law law) {
        this.law = law;
    }

    void add(Entry entry) {
        if (isFee(entry) && isOnSettlement(entry) && claims(entry)) {
            names(entry)
                    .forEach(
                            name ->
                                    lines.computeIfAbsent(
                                                    new Fees(name, entry.kind()),
                                                    f -> new TreeMap<>())
                                            .putIfAbsent(entry.taxPoint(), entry.number()));
        }
    }

    /** The first of the lines that claim the fees of an invoice, by its number. */
    OptionalLong of(Entry invoice) {
        if (lines.isEmpty() || !isFee(invoice) || isOnSettlement(invoice)) {
            return OptionalLong.empty();
        }
        Optional<LocalDate> first =
                law.limit(DAYS, invoice.taxPoint())
                        .map(Dated::value)
                        .map(days -> days.before(invoice.taxPoint()));
        return names(invoice)
                .map(name -> lines.getOrDefault(new Fees(name, invoice.kind()), new TreeMap<>()))
                .flatMap(
                        days ->
                                first
                                        .map(f -> days.subMap(f, true, invoice.taxPoint(), true))
                                        .stream())
                .flatMap(days -> days.values().stream())
                .mapToLong(Long::longValue)
                .findFirst();
    }

    private static Stream<String> names(Entry entry) {
        return Stream.of(entry.profile().channel(), entry.profile().party())
                .map(Plain::name)
                .filter(name -> !name.isEmpty())
                .distinct();
    }

    private static boolean isFee(Entry entry) {
        return entry.kind() == Kind.FEE || entry.kind() == Kind.FEE_REFUND;
    }

    private static boolean isOnSettlement(Entry entry) {
        return !entry.profile().settlement().isEmpty();
    }

    private static boolean claims(Entry entry) {
        Evidence evidence = entry.profile().evidence();
        boolean held = evidence != Evidence.UNSTATED && evidence != Evidence.MISSING;
        boolean printed = entry.amounts().vat().filter(v -> !v.isZero()).isPresent();
        boolean rated = entry.profile().rate().percent().filter(r -> !r.isZero()).isPresent();
        return held && (printed || (rated && entry.amounts().vat().isEmpty()));
    }
}
