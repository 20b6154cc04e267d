package quarterfold.treatment;

import java.time.LocalDate;
import java.util.Optional;
import quarterfold.law.Dated;
import quarterfold.law.Law;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Particular;
import quarterfold.ledger.Particulars;
import quarterfold.ledger.Schemes;
import quarterfold.ledger.Settings;
import quarterfold.money.Amount;

/** States the facts of {@link Rare} of an entry. */
final class RareFinder {

    private static final String NONE = "none";
    private static final String UNSTATED = "unstated";

    private final Law law;
    private final Settings settings;
    private Optional<Rare> ordinary = Optional.empty();

    RareFinder(Law law, Settings settings) {
        this.law = law;
        this.settings = settings;
    }

    /**
     * @param decided a word of {@link quarterfold.law.Fact#DECIDED}
     */
    Rare of(Entry entry, Occasion occasion, String decided) {
        Cause cause = occasion.cause();
        String registration = registration(entry.taxPoint());
        String scheme = scheme(entry, occasion.taxPoint());
        Particulars stated = entry.line().particulars();
        boolean relief = BadDebts.isRelief(entry.profile());
        if (stated.isEmpty()
                && !relief
                && cause == Cause.SUPPLY
                && decided.equals(NONE)
                && registration.equals("during")) {
            if (ordinary.filter(o -> o.scheme().equals(scheme)).isEmpty()) {
                ordinary =
                        Optional.of(
                                new Rare(
                                        Cause.SUPPLY,
                                        NONE,
                                        "during",
                                        "yes",
                                        UNSTATED,
                                        UNSTATED,
                                        UNSTATED,
                                        UNSTATED,
                                        scheme));
            }
            return ordinary.get();
        }
        return new Rare(
                cause,
                decided,
                registration,
                relief
                        ? BadDebts.inTime(entry, law)
                        : registration.equals("before") ? inTime(entry) : "yes",
                onHand(stated),
                consignment(entry),
                stated.word(Particular.USE).orElse(UNSTATED),
                stated.word(Particular.ADDRESSED).orElse(UNSTATED),
                scheme);
    }

    /**
     * The scheme the entry is under. Capital goods on which a flat-rate trader claims VAT, and
     * their sale, are outside that scheme: VAT Regulations 1995 reg 55E; HMRC manual FRS6500.
     */
    private String scheme(Entry entry, LocalDate day) {
        String scheme = settings.schemeOn(day);
        return scheme.equals(Schemes.FLAT_RATE)
                        && law.counts("capital-goods", entry.profile().category(), day)
                        && (entry.kind().side() == Kind.Side.SALES || isLarge(entry))
                ? Schemes.STANDARD
                : scheme;
    }

    /** Whether one purchase of capital goods, with its VAT, is dear enough for a claim. */
    private boolean isLarge(Entry entry) {
        Amount price = entry.amounts().money().abs();
        boolean atLimit =
                law.choices().holds("flat-rate-capital-goods-at-limit=claim", settings.choices());
        return law.limit("flat-rate-capital-goods", entry.taxPoint())
                .map(limit -> price.compareTo(limit.value().amount()))
                .filter(above -> above > 0 || (above == 0 && atLimit))
                .isPresent();
    }

    private String registration(LocalDate day) {
        return day.isBefore(settings.registeredFrom())
                ? "before"
                : settings.registeredTo().filter(day::isAfter).isPresent() ? "after" : "during";
    }

    /** Whether a purchase before the registration is within the years or months the law allows. */
    private String inTime(Entry entry) {
        LocalDate start = settings.registeredFrom();
        boolean goods = entry.kind() == Kind.PURCHASE || entry.kind() == Kind.PURCHASE_CREDIT;
        Optional<LocalDate> earliest =
                law.limit(goods ? "pre-registration-goods" : "pre-registration-services", start)
                        .map(Dated::value)
                        .map(limit -> limit.before(start));
        return earliest.filter(d -> !entry.taxPoint().isBefore(d)).isPresent() ? "yes" : "no";
    }

    private static String onHand(Particulars stated) {
        return stated.share(Particular.ON_HAND)
                .map(s -> s.isZero() ? "no" : "yes")
                .orElse(UNSTATED);
    }

    /** What the consignment comes to; what else is measured is told by {@link Portions}. */
    private String consignment(Entry entry) {
        return entry.line()
                .particulars()
                .amount(Particular.CONSIGNMENT)
                .flatMap(
                        value ->
                                law.limit("consignment", entry.taxPoint())
                                        .map(l -> value.compareTo(l.value().amount()) <= 0))
                .map(within -> within ? "within" : "above")
                .orElse(UNSTATED);
    }
}
