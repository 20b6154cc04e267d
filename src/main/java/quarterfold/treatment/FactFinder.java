package quarterfold.treatment;

import java.time.LocalDate;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import quarterfold.law.Fact;
import quarterfold.law.Law;
import quarterfold.law.VatNumber;
import quarterfold.ledger.ChannelCollects;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Profile;
import quarterfold.ledger.Settings;
import quarterfold.money.Percent;

/** States the facts that a profile settles for all its entries, in the treatment table's words. */
final class FactFinder {

    private final Law law;
    private final Settings settings;

    FactFinder(Law law, Settings settings) {
        this.law = law;
        this.settings = settings;
    }

    /** Every fact but those that differ from entry to entry: liability, printed VAT, claims. */
    Map<Fact, String> of(Profile profile, LocalDate day) {
        String home = settings.stock().isEmpty() ? "GB" : settings.stock();
        boolean bought = profile.kind().side() == Kind.Side.PURCHASES;
        String supplier =
                profile.partyCountry().isEmpty()
                        ? "unstated"
                        : law.area(profile.partyCountry(), day);
        String startsFrom = profile.from();
        if (startsFrom.isEmpty()) {
            startsFrom =
                    bought && !profile.partyCountry().isEmpty() ? profile.partyCountry() : home;
        }
        boolean supplierIsHome = !supplier.equals("eu") && !supplier.equals("elsewhere");
        Map<Fact, String> facts = new EnumMap<>(Fact.class);
        facts.put(
                Fact.CURRENCY, profile.currency().equals(settings.currency()) ? "home" : "foreign");
        facts.put(Fact.SELLER, isHome(law.area(settings.country(), day)) ? "uk" : "overseas");
        facts.put(Fact.NORTHERN_IRELAND, settings.northernIreland() ? "yes" : "no");
        facts.put(Fact.KIND, profile.kind().code());
        String starts = law.area(startsFrom, day);
        facts.put(Fact.STARTS, starts);
        facts.put(Fact.GOES, goes(profile, starts, home, day));
        facts.put(Fact.CUSTOMER, profile.customer().code());
        facts.put(Fact.CUSTOMER_VAT, word(VatNumber.status(profile.customerVat(), true)));
        facts.put(Fact.CHANNEL_COLLECTS, collects(profile));
        facts.put(Fact.SUPPLIER, supplier);
        facts.put(Fact.SUPPLIER_VAT, word(VatNumber.status(profile.partyVat(), supplierIsHome)));
        facts.put(Fact.EVIDENCE, profile.evidence().code());
        facts.put(Fact.BLOCKED, blocked(profile.category(), day));
        facts.put(Fact.SETTLEMENT, profile.settlement().isEmpty() ? "no" : "yes");
        facts.put(Fact.CATEGORY, profile.category());
        return facts;
    }

    private static String collects(Profile profile) {
        return profile.channel().isEmpty() && profile.channelCollects() == ChannelCollects.NO
                ? "none"
                : profile.channelCollects().code();
    }

    /** Where goods go; a sale from stock abroad must say, others end at home. */
    private String goes(Profile profile, String starts, String home, LocalDate day) {
        if (!profile.to().isEmpty()) {
            return law.area(profile.to(), day);
        }
        if (profile.kind().side() != Kind.Side.SALES) {
            return law.area(home, day);
        }
        return isHome(starts) ? starts : "unstated";
    }

    private static boolean isHome(String area) {
        return area.equals("gb") || area.equals("ni");
    }

    private String blocked(String category, LocalDate day) {
        if (category.isEmpty()) {
            return "none";
        }
        return law.blocked(category, day)
                .map(b -> b.value().blocked())
                .map(p -> p.isZero() ? "none" : p.equals(Percent.HUNDRED) ? "full" : "part")
                .orElse("unknown");
    }

    private static String word(VatNumber.Status status) {
        return status.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
