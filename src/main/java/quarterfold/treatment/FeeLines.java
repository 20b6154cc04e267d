package quarterfold.treatment;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import quarterfold.law.Dated;
import quarterfold.law.Law;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Evidence;
import quarterfold.ledger.Kind;

/**
 * Fees that are claimed line by line on settlements, since the lines state evidence and VAT, and
 * the channel's invoice for the same fees beside them, even where it is entered as a purchase: an
 * e-invoice does not say what it is for.
 *
 * <p>Input tax is never deducted twice: VAT Regulations 1995 reg 29(4). A settlement's line without
 * evidence is money only and is none of these. An invoice is looked at with the lines of the days
 * up to it: {@code fee-invoice-lines} of {@code limits.csv}.
 */
final class FeeLines {
    private static final String DAYS = "fee-invoice-lines";

    /** Sets of {@code counted-categories.csv}. */
    private static final List<String> GOODS = List.of("relevant-goods", "capital-goods");

    private final Law law;
    private final Map<Fees, NavigableMap<LocalDate, Long>> lines = new HashMap<>();
    private final List<Entry> invoices = new ArrayList<>();

    /** Fees or credits of a channel. */
    private record Fees(String channel, Kind kind) {}

    private final ChannelParties parties;

    FeeLines(Law law, ChannelParties parties) {
        this.law = law;
        this.parties = parties;
    }

    void add(Entry entry) {
        if (ChannelParties.isFee(entry.kind()) && isOnSettlement(entry) && claims(entry)) {
            ChannelParties.taking(entry.profile())
                    .forEach(
                            name ->
                                    lines.computeIfAbsent(
                                                    new Fees(name, entry.kind()),
                                                    f -> new TreeMap<>())
                                            .putIfAbsent(entry.taxPoint(), entry.number()));
        }
    }

    /** Adds what may be an invoice for fees, as nobody has said how it is treated. */
    void addUndecided(Entry entry) {
        if (entry.kind().side() == Kind.Side.PURCHASES && !isOnSettlement(entry)) {
            invoices.add(entry);
        }
    }

    /** The undecided invoices for fees that lines claim too, by their numbers. */
    Set<Long> claimedAgain() {
        return lines.isEmpty()
                ? Set.of()
                : invoices.stream()
                        .filter(invoice -> of(invoice).isPresent())
                        .map(Entry::number)
                        .collect(Collectors.toSet());
    }

    /** The first of the lines that claim the fees of an invoice, by its number. */
    OptionalLong of(Entry invoice) {
        boolean bought = invoice.kind().side() == Kind.Side.PURCHASES;
        if (lines.isEmpty() || !bought || isOnSettlement(invoice) || isOfGoods(invoice)) {
            return OptionalLong.empty();
        }
        Optional<LocalDate> first =
                law.limit(DAYS, invoice.taxPoint())
                        .map(Dated::value)
                        .map(days -> days.before(invoice.taxPoint()));
        Kind fee = invoice.kind().direction() < 0 ? Kind.FEE : Kind.FEE_REFUND;
        return parties.charging(invoice.profile()).stream()
                .map(name -> lines.getOrDefault(new Fees(name, fee), new TreeMap<>()))
                .flatMap(
                        days ->
                                first
                                        .map(f -> days.subMap(f, true, invoice.taxPoint(), true))
                                        .stream())
                .flatMap(days -> days.values().stream())
                .mapToLong(Long::longValue)
                .findFirst();
    }

    /** Whether it is a purchase that says to be of goods, which are no fees. */
    private boolean isOfGoods(Entry invoice) {
        String category = invoice.profile().category();
        return !ChannelParties.isFee(invoice.kind())
                && GOODS.stream().anyMatch(set -> law.counts(set, category, invoice.taxPoint()));
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
