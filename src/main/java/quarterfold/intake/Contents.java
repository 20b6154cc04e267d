package quarterfold.intake;

import java.util.EnumSet;
import java.util.Set;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Line;

/** What a file turns out to hold, by its lines. */
final class Contents {
    private final Set<Kind> kinds = EnumSet.noneOf(Kind.class);
    private boolean settles;

    void add(Line line) {
        kinds.add(line.profile().kind());
        settles |= !line.profile().settlement().isEmpty();
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
