package quarterfold.treatment;

import static quarterfold.law.VatNumber.Status.GB;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import quarterfold.law.Dated;
import quarterfold.law.EvidenceRule;
import quarterfold.law.Importer;
import quarterfold.law.Law;
import quarterfold.law.VatNumber;
import quarterfold.ledger.Decision;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Evidence;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Particular;
import quarterfold.ledger.Settings;
import quarterfold.money.Amount;

/**
 * Weighs the document behind a purchase or an import: what it supports, its grade, and why.
 *
 * <p>VAT Regulations 1995 reg 29(2): who claims holds the document at the time; reg 14 and 16A say
 * what it shows, {@code evidence-shows.csv} in rows.
 */
final class EvidenceWeigher {

    /**
     * What the document supports.
     *
     * @param claims a word of {@link quarterfold.law.Fact#CLAIMS}
     * @param unlessAgain the same word if the entry claims nothing again
     * @param again what the entry seems to claim again
     * @param vatConverted whether it prints its VAT in another currency alone
     */
    record Weighed(
            String claims,
            String unlessAgain,
            Optional<EvidenceGrade> grade,
            Optional<DoubleClaims.Found> again,
            boolean vatConverted) {
        static final Weighed NOT_WEIGHED =
                new Weighed("no", "no", Optional.empty(), Optional.empty(), false);

        /** The questions about a credit entered twice, and about VAT in another currency. */
        List<String> asks() {
            boolean creditTwice = again.isPresent() && !ONCE.contains(claims);
            if (!creditTwice && !vatConverted) {
                return List.of();
            }
            return Stream.of(
                            creditTwice ? "credit-entered-twice" : "",
                            vatConverted ? "vat-not-in-sterling" : "")
                    .filter(code -> !code.isEmpty())
                    .toList();
        }

        /** The words it gives to questions. */
        Map<String, String> words() {
            Map<String, String> words = new HashMap<>();
            words.put("fault", fault());
            again.ifPresent(
                    found -> {
                        words.putAll(found.words());
                        words.put("other", Long.toString(found.other()));
                    });
            return words;
        }

        /** Why the document does not support a reclaim. */
        private String fault() {
            return switch (claims) {
                case "over-limit" -> "the whole of it is above the limit of its kind";
                case "not-this-category" -> "it does for other costs alone";
                case "another-name" -> "it is made out in another name than the business";
                default -> "something of it is in question";
            };
        }
    }

    /** Words that say that the entry counts once, with another. */
    private static final Set<String> ONCE =
            Set.of(
                    "repeated",
                    "import-vat",
                    "fee-lines",
                    "advance",
                    "other-copy",
                    "on-bill",
                    "met-again",
                    "replaced");

    private final Law law;
    private final Settings settings;
    private final ClaimedAgain claimed;
    private final ImportStatements imports;
    private final Exchange exchange;
    private final Overcharge overcharge;
    private final DocumentShows shows;

    EvidenceWeigher(Context context, Exchange exchange) {
        this.exchange = exchange;
        this.law = context.law();
        this.settings = context.settings();
        this.claimed = new ClaimedAgain(context);
        this.imports = context.ties().imports();
        this.overcharge = new Overcharge(context.law());
        this.shows = new DocumentShows(context.law());
    }

    Weighed weigh(
            Answered answered,
            Exchange.Exchanged exchanged,
            Optional<EvidenceRule> rule,
            Liability liability) {
        Entry entry = answered.entry();
        if (!SupplierDocuments.isWeighed(entry)) {
            return Weighed.NOT_WEIGHED;
        }
        Optional<DoubleClaims.Found> again =
                claimed.of(entry, isHome(entry), carriesVat(entry, liability));
        List<String> reasons = new ArrayList<>();
        String claims = "yes";
        claims = worse(claims, kind(answered, rule, reasons));
        claims = worse(claims, limit(entry, rule, reasons));
        String named = name(entry, reasons);
        claims = isImportOfAnother(entry, named) ? named : worse(claims, named);
        claims = worse(claims, number(answered, reasons));
        boolean over =
                (isHome(entry) || VatNumber.status(entry.profile().partyVat(), false) == GB)
                        && overcharge.isIn(exchanged.printed(), liability, reasons);
        String unlessAgain = claims;
        if (again.isPresent()) {
            reasons.add(again.get().reason());
            claims = again.get().isSure() || isClaim(entry) ? again.get().claims() : claims;
        }
        boolean sterling = isInSterling(exchanged, liability, reasons);
        boolean unconverted = !exchange.isHome(entry);
        held(entry, reasons);
        DocumentShows.Shown shown = shows.of(entry, reasons);
        boolean doubtful =
                !claims.equals("yes")
                        || over
                        || again.isPresent()
                        || unconverted
                        || (shown.lacks("supplier-vat-number") && carriesVat(entry, liability));
        return new Weighed(
                claims,
                unlessAgain,
                Optional.of(
                        new EvidenceGrade(
                                grade(entry, claims, doubtful, sterling && shown.isComplete()),
                                reasons)),
                again,
                !sterling
                        && !unconverted
                        && claims.equals("yes")
                        && answered.decided().equals("none"));
    }

    /**
     * Whether the VAT is stated in the return's currency, as VAT Regulations 1995 reg 14(1)(l) has
     * it of a document that shows VAT; amounts without VAT may be in any that has a rate.
     */
    private boolean isInSterling(
            Exchange.Exchanged exchanged, Liability liability, List<String> reasons) {
        Entry stated = exchanged.stated();
        if (exchange.isHome(stated)) {
            return true;
        }
        Optional<Amount> vat = stated.line().particulars().amount(Particular.STERLING_VAT);
        if (vat.isPresent()) {
            reasons.add("VAT of %s stated in %s".formatted(vat.get(), settings.currency()));
            return true;
        }
        if (exchanged.conversion().isPresent() && !carriesVat(stated, liability)) {
            return true;
        }
        reasons.add(
                "its amounts are in %s: the VAT must be stated in %s"
                        .formatted(stated.profile().currency(), settings.currency()));
        return false;
    }

    private static EvidenceGrade.Grade grade(
            Entry entry, String claims, boolean doubtful, boolean complete) {
        boolean nothing = claims.equals("no") && entry.profile().evidence() != Evidence.ALTERNATIVE;
        if (nothing) {
            return EvidenceGrade.Grade.NONE;
        }
        if (doubtful) {
            return EvidenceGrade.Grade.IN_QUESTION;
        }
        return complete ? EvidenceGrade.Grade.FULL : EvidenceGrade.Grade.ENOUGH;
    }

    /** The first thing found stands: later ones are only told. */
    private static String worse(String known, String found) {
        return known.equals("yes") ? found : known;
    }

    /** Whether the entry adds to a claim: a credit that is entered twice takes from it. */
    private static boolean isClaim(Entry entry) {
        return !SupplierDocuments.isCredit(entry) && entry.amounts().money().signum() >= 0;
    }

    private static boolean carriesVat(Entry entry, Liability liability) {
        boolean printed = entry.amounts().vat().filter(v -> !v.isZero()).isPresent();
        return printed || liability.isTaxed();
    }

    private String kind(Answered answered, Optional<EvidenceRule> rule, List<String> reasons) {
        Entry entry = answered.entry();
        Evidence evidence = entry.profile().evidence();
        Optional<Decision> accepted =
                answered.seen().filter(d -> d.value().equals(evidence.code()));
        accepted.ifPresent(
                d ->
                        reasons.add(
                                "%s: seen, as %s said on %s: %s"
                                        .formatted(evidence.code(), d.who(), d.day(), d.why())));
        if (evidence == Evidence.ALTERNATIVE && accepted.isPresent()) {
            return "yes";
        }
        if (rule.filter(EvidenceRule::claims).isEmpty()) {
            reasons.add(
                    "%s: %s"
                            .formatted(
                                    evidence.code(),
                                    rule.map(EvidenceRule::mustShow)
                                            .orElse("no such document on this day")));
            return "no";
        }
        if (accepted.isEmpty()) {
            reasons.add("%s, as entered".formatted(evidence.code()));
        }
        List<String> categories = rule.get().onlyCategories();
        if (!categories.isEmpty() && !categories.contains(entry.profile().category())) {
            reasons.add(
                    "good only for %s, not for %s"
                            .formatted(String.join(", ", categories), category(entry)));
            return "not-this-category";
        }
        return "yes";
    }

    private static String category(Entry entry) {
        String category = entry.profile().category();
        return category.isEmpty() ? "a cost without a category" : category;
    }

    private String limit(Entry entry, Optional<EvidenceRule> rule, List<String> reasons) {
        Optional<Amount> upTo = rule.flatMap(EvidenceRule::upTo);
        if (upTo.isEmpty()) {
            return "yes";
        }
        Amount total = claimed.documents().total(entry, exchange).abs();
        boolean over = total.compareTo(upTo.get()) > 0;
        reasons.add(
                "the whole document comes to %s, %s the limit of %s"
                        .formatted(total, over ? "above" : "within", upTo.get()));
        return over ? "over-limit" : "yes";
    }

    /** In whose name the document is made out, or whom an import names. */
    private String name(Entry entry, List<String> reasons) {
        if (entry.kind().side() == Kind.Side.IMPORTS) {
            return importer(entry, reasons);
        }
        String addressed = entry.line().particulars().word(Particular.ADDRESSED).orElse("");
        return switch (addressed) {
            case "business" -> {
                reasons.add("made out to the business");
                yield "yes";
            }
            case "employee" -> {
                boolean good =
                        law.evidence("in-employee-name", entry.taxPoint())
                                .map(Dated::value)
                                .filter(
                                        r ->
                                                r.onlyCategories()
                                                        .contains(entry.profile().category()))
                                .isPresent();
                reasons.add(
                        "made out to an employee, which %s for %s"
                                .formatted(good ? "does" : "does not do", category(entry)));
                yield good ? "yes" : "another-name";
            }
            case "other" -> {
                reasons.add("made out to somebody else: no evidence of a supply to the business");
                yield "another-name";
            }
            default -> "yes";
        };
    }

    /**
     * Whose import it is comes first: that of another is none of this business's, document or not.
     */
    private static boolean isImportOfAnother(Entry entry, String named) {
        return entry.kind().side() == Kind.Side.IMPORTS && named.equals("another-name");
    }

    private String importer(Entry entry, List<String> reasons) {
        reasons.add(
                "the owner of the goods at import alone may claim: look that it was this business");
        String stated = entry.profile().partyVat();
        if (stated.isEmpty()) {
            return isBesideAnother(entry, reasons) ? "another-name" : "yes";
        }
        Importer.Match match = Importer.match(stated, settings.vatNumber());
        reasons.add("importer %s: %s".formatted(stated, match.words()));
        return match.isOurs() ? "yes" : "another-name";
    }

    /** A row without a number is the book's own in a file of its own imports alone. */
    private boolean isBesideAnother(Entry entry, List<String> reasons) {
        boolean beside =
                imports.importersIn(entry.source()).stream()
                        .anyMatch(n -> !Importer.match(n, settings.vatNumber()).isOurs());
        if (beside) {
            reasons.add("no importer is stated, and its file has imports of another");
        }
        return beside;
    }

    /** A number that fails its check blocks a claim until a person has seen the document. */
    private String number(Answered answered, List<String> reasons) {
        Entry entry = answered.entry();
        String number = entry.profile().partyVat();
        if (entry.kind().side() != Kind.Side.PURCHASES || number.isEmpty()) {
            return "yes";
        }
        return switch (VatNumber.status(number, isHome(entry))) {
            case GB -> {
                reasons.add("VAT number %s: its check digits hold".formatted(number));
                yield "yes";
            }
            case GB_FAILS -> {
                boolean confirmed = answered.seen().isPresent();
                reasons.add(
                        "VAT number %s: fails its check digits%s"
                                .formatted(
                                        number,
                                        confirmed ? ", but was confirmed by who saw it" : ""));
                yield confirmed || !isHome(entry) ? "yes" : "number-fails";
            }
            case FOREIGN, NONE -> "yes";
        };
    }

    private boolean isHome(Entry entry) {
        String country = entry.profile().partyCountry();
        String area = country.isEmpty() ? "gb" : law.area(country, entry.taxPoint());
        return area.equals("gb") || area.equals("ni");
    }

    private static void held(Entry entry, List<String> reasons) {
        entry.line()
                .particulars()
                .day(Particular.HELD)
                .ifPresent(
                        day ->
                                reasons.add(
                                        day.isAfter(entry.taxPoint())
                                                ? "held since %s: claimed then".formatted(day)
                                                : "held since %s".formatted(day)));
    }
}
