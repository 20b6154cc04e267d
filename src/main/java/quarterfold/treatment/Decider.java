package quarterfold.treatment;

import java.time.LocalDate;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Optional;
import quarterfold.law.BoxRule;
import quarterfold.law.Dated;
import quarterfold.law.EvidenceRule;
import quarterfold.law.Fact;
import quarterfold.law.Law;
import quarterfold.law.TreatmentRow;
import quarterfold.law.Treatments;
import quarterfold.law.VatRule;
import quarterfold.ledger.Profile;
import quarterfold.ledger.Settings;
import quarterfold.money.Percent;

/**
 * Looks up the deciding row once for all entries of one profile and the same facts, between two
 * days on which some table changes.
 */
final class Decider {

    /** Where no row fits: nothing is added to any box, and a person is asked. */
    private static final TreatmentRow NO_RULE =
            new TreatmentRow(
                    "-",
                    "undecided",
                    Map.of(),
                    "",
                    "",
                    VatRule.NONE,
                    false,
                    "no-rule",
                    "No rule of the table fits this entry");

    private static final Ruling UNDECIDED =
            new Ruling(NO_RULE, "", Optional.empty(), "", Percent.HUNDRED, List.of());

    private static final int PROFILES_HELD = 10_000;

    private final Law law;
    private final Settings settings;
    private final FactFinder factFinder;
    private final NavigableSet<LocalDate> changes;
    private final IdentityHashMap<Profile, Known> known = new IdentityHashMap<>();

    /** The facts that differ between entries of one profile. */
    record Varying(Liability liability, String vat, String claims, Rare rare, String treatment) {}

    /** What is known of a profile between two changes of the law. */
    private static final class Known {
        private final LocalDate first;
        private final LocalDate next;
        private final Map<Fact, String> facts;
        private final Optional<EvidenceRule> evidence;
        private final Map<Varying, Ruling> rulings = new HashMap<>();
        private Optional<Varying> lastAsked = Optional.empty();
        private Ruling lastRuling = UNDECIDED;

        Known(
                LocalDate first,
                LocalDate next,
                Map<Fact, String> facts,
                Optional<EvidenceRule> evidence) {
            this.first = first;
            this.next = next;
            this.facts = facts;
            this.evidence = evidence;
        }

        boolean holds(LocalDate day) {
            return !day.isBefore(first) && day.isBefore(next);
        }
    }

    Decider(Law law, Settings settings) {
        this.law = law;
        this.settings = settings;
        this.factFinder = new FactFinder(law, settings);
        this.changes = law.changes();
    }

    Ruling decide(Profile profile, LocalDate day, Varying varying) {
        Known now = known(profile, day);
        if (now.lastAsked.isEmpty() || !now.lastAsked.get().equals(varying)) {
            now.lastRuling =
                    now.rulings.computeIfAbsent(
                            varying, asked -> look(now.facts, profile, day, asked));
            now.lastAsked = Optional.of(varying);
        }
        return now.lastRuling;
    }

    /** What the profile's evidence supports on the day. */
    Optional<EvidenceRule> evidence(Profile profile, LocalDate day) {
        return known(profile, day).evidence;
    }

    private Known known(Profile profile, LocalDate day) {
        Known now = known.get(profile);
        return now == null || !now.holds(day) ? learn(profile, day) : now;
    }

    private Known learn(Profile profile, LocalDate day) {
        if (known.size() >= PROFILES_HELD) {
            known.clear();
        }
        Known now =
                new Known(
                        Optional.ofNullable(changes.floor(day)).orElse(LocalDate.MIN),
                        Optional.ofNullable(changes.higher(day)).orElse(LocalDate.MAX),
                        factFinder.of(profile, day),
                        law.evidence(profile.evidence().code(), day).map(Dated::value));
        known.put(profile, now);
        return now;
    }

    private Ruling look(Map<Fact, String> shared, Profile profile, LocalDate day, Varying varying) {
        Map<Fact, String> facts = new EnumMap<>(shared);
        facts.put(Fact.LIABILITY, varying.liability().category());
        facts.put(Fact.VAT, varying.vat());
        facts.put(Fact.CLAIMS, varying.claims());
        varying.rare().state(facts);
        Optional<Dated<TreatmentRow>> found =
                varying.treatment().isEmpty()
                        ? law.treatments()
                                .decide(facts, day, c -> law.choices().holds(c, settings.choices()))
                        : law.treatments().named(varying.treatment(), day).map(Decider::decidedOn);
        TreatmentRow row = found.map(Dated::value).orElse(NO_RULE);
        Percent blocked =
                law.blocked(profile.category(), day)
                        .map(b -> b.value().blocked())
                        .orElse(Percent.ZERO);
        Optional<Percent> rate = rate(row, varying.liability(), day);
        return new Ruling(
                row,
                found.map(Dated::source).orElse(""),
                rate,
                rate.map(r -> r + "%").orElse(""),
                blocked.complement(),
                boxes(row, varying.rare().scheme(), profile.category(), day));
    }

    /** A treatment a person decided on asks nothing more. */
    private static Dated<TreatmentRow> decidedOn(Dated<TreatmentRow> row) {
        TreatmentRow value = row.value();
        return new Dated<>(
                new TreatmentRow(
                        value.rule(),
                        value.treatment(),
                        value.when(),
                        value.choice(),
                        value.rate(),
                        value.vatRule(),
                        value.claims(),
                        "",
                        value.why()),
                row.from(),
                row.to(),
                row.source());
    }

    private List<BoxRule> boxes(TreatmentRow row, String scheme, String category, LocalDate day) {
        return law.boxes(row.treatment(), scheme, category, day).stream()
                .map(Dated::value)
                .toList();
    }

    private Optional<Percent> rate(TreatmentRow row, Liability liability, LocalDate day) {
        if (row.rate().isEmpty()) {
            return Optional.empty();
        }
        boolean own = row.rate().equals(Treatments.OWN_RATE);
        if (own && liability.percent().isPresent()) {
            return liability.percent();
        }
        return law.rates().on(own ? liability.category() : row.rate(), day).map(Dated::value);
    }
}
