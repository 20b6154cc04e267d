package quarterfold.treatment;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Evidence;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Particular;
import quarterfold.ledger.Profile;

/**
 * The sales of goods sent abroad without evidence at once, by their order or document, so that a
 * refund or discount, which may name the sale's document beside its own, follows its sale: what was
 * paid back is not charged when the time runs out.
 */
final class ExportSales {

    /** No such sale. */
    static final ExportSales NONE = new ExportSales();

    private final Map<Key, Sale> sales = new HashMap<>();
    private final Map<Long, List<Entry>> credits = new HashMap<>();

    private record Key(String channelOrParty, String orderOrDocument) {

        static Optional<Key> of(Entry entry) {
            Profile profile = entry.profile();
            String order = entry.line().order();
            String document = entry.line().document();
            return !order.isEmpty()
                    ? Optional.of(new Key("channel " + profile.channel(), order))
                    : document.isEmpty()
                            ? Optional.empty()
                            : Optional.of(ofDocument(profile, document));
        }

        private static Key ofDocument(Profile profile, String document) {
            return new Key("party " + profile.party(), Plain.number(document));
        }

        /** Its own, and those of the documents that it names. */
        static Stream<Key> all(Entry reduction) {
            Stream<Key> named =
                    reduction.line().particulars().word(Particular.FOLLOWS).stream()
                            .flatMap(numbers -> Stream.of(numbers.split(",", -1)))
                            .map(number -> ofDocument(reduction.profile(), number));
            return Stream.concat(of(reduction).stream(), named);
        }
    }

    /**
     * A sale of goods sent abroad.
     *
     * @param number of its entry
     * @param taxPoint the time of supply, from which the time for evidence runs
     * @param evidenced the day the evidence was obtained, if it was
     */
    record Sale(long number, LocalDate taxPoint, Optional<LocalDate> evidenced) {}

    private ExportSales() {}

    static ExportSales of(Search ledger, ExportEvidence evidence, Answers answers) {
        ExportSales all = new ExportSales();
        List<Entry> reductions = new ArrayList<>();
        ledger.forEach(
                p -> mayBeSaleOrCredit(p.kind()) && evidence.isOfGoodsSentAbroad(p),
                entry -> {
                    Entry stated = Answered.of(entry, answers).entry();
                    if (entry.kind() == Kind.SALE) {
                        all.see(stated);
                    } else {
                        reductions.add(stated);
                    }
                });
        reductions.forEach(
                r ->
                        all.of(r)
                                .ifPresent(
                                        sale ->
                                                all.credits
                                                        .computeIfAbsent(
                                                                sale.number(),
                                                                n -> new ArrayList<>())
                                                        .add(r)));
        return all;
    }

    private static boolean mayBeSaleOrCredit(Kind kind) {
        return kind == Kind.SALE || kind == Kind.SALE_REFUND || kind == Kind.DISCOUNT;
    }

    private void see(Entry sale) {
        Optional<LocalDate> day = sale.line().particulars().day(Particular.EVIDENCED);
        if (day.isEmpty() && sale.profile().evidence() == Evidence.EXPORT) {
            return; // held from the start
        }
        LocalDate sent = sale.line().particulars().day(Particular.SENT).orElse(sale.taxPoint());
        Key.of(sale).ifPresent(key -> sales.putIfAbsent(key, new Sale(sale.number(), sent, day)));
    }

    /**
     * What was paid back of a sale up to a day, in words that follow its VAT; empty where nothing
     * was. Its VAT is due on what is left, in an occasion of its own.
     */
    String credited(Entry sale, LocalDate until) {
        String found =
                credits.getOrDefault(sale.number(), List.of()).stream()
                        .filter(c -> !c.taxPoint().isAfter(until))
                        .map(
                                c ->
                                        "entry %d of %s %s"
                                                .formatted(
                                                        c.number(),
                                                        c.amounts().money(),
                                                        c.profile().currency()))
                        .collect(Collectors.joining(", "));
        return found.isEmpty()
                ? ""
                : ", less that in what was credited by then (%s)".formatted(found);
    }

    /** Whether there is any such sale. */
    boolean any() {
        return !sales.isEmpty();
    }

    /** The sale that a refund or discount reduces. */
    Optional<Sale> of(Entry reduction) {
        return sales.isEmpty()
                ? Optional.empty()
                : Key.all(reduction)
                        .flatMap(key -> Optional.ofNullable(sales.get(key)).stream())
                        .findFirst();
    }
}
