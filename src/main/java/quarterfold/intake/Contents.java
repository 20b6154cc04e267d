package quarterfold.intake;

import java.util.Collections;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Line;
import quarterfold.ledger.Profile;

/** What a file turns out to hold, by its lines. */
final class Contents {
    private final Set<Kind> kinds = EnumSet.noneOf(Kind.class);
    private final Set<String> currencies = new TreeSet<>();
    private boolean settles;
    private Optional<Profile> last = Optional.empty();

    void add(Line line) {
        Profile profile = line.profile();
        if (last.isEmpty() || !last.get().equals(profile)) {
            currencies.add(profile.currency());
            kinds.add(profile.kind());
            settles |= !profile.settlement().isEmpty();
            last = Optional.of(profile);
        }
    }

    /** The currencies of the money, ISO 4217. */
    Set<String> currencies() {
        return Collections.unmodifiableSet(currencies);
    }

    /** One word, such as {@code settlement}; empty where there are no lines. */
    String word() {
        if (kinds.isEmpty()) {
            return "";
        }
        if (areAll(of(Kind.Side.MONEY))) {
            return "money";
        }
        if (settles) {
            return "settlement";
        }
        if (areAll(EnumSet.of(Kind.IMPORT_VAT_PAID, Kind.IMPORT_DUTY))) {
            return "certificate";
        }
        if (areAll(EnumSet.of(Kind.IMPORT_VAT_POSTPONED))) {
            return "statement";
        }
        if (areAll(EnumSet.of(Kind.EXPENSE, Kind.EXPENSE_CREDIT))) {
            return "expenses";
        }
        if (areAll(of(Kind.Side.SALES))) {
            return "sales";
        }
        return areAll(of(Kind.Side.PURCHASES)) ? "purchases" : "mixed";
    }

    private boolean areAll(Set<Kind> of) {
        return of.containsAll(kinds);
    }

    private static Set<Kind> of(Kind.Side side) {
        Set<Kind> of = EnumSet.noneOf(Kind.class);
        for (Kind kind : Kind.values()) {
            if (kind.side() == side) {
                of.add(kind);
            }
        }
        return of;
    }
}
