package quarterfold.treatment;

import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import quarterfold.law.Fact;
import quarterfold.law.Law;
import quarterfold.ledger.Entry;

/**
 * What a purchase or an import claims again: for sure, by the lists and statements an import stands
 * on, or as it seems, by any other document.
 */
final class ClaimedAgain {
    private final ImportStatements imports;
    private final DoubleClaims doubles;

    private final Law law;

    ClaimedAgain(Context context) {
        law = context.law();
        imports = context.ties().imports();
        doubles = context.together().claims().orElseGet(() -> new DoubleClaims(context.law()));
    }

    SupplierDocuments documents() {
        return doubles.documents();
    }

    /**
     * What the entry claims again, where it does.
     *
     * @param home whether its supplier charges VAT of this country, where it charges any
     * @param carriesVat whether it charges VAT at all
     */
    Optional<DoubleClaims.Found> of(Entry entry, boolean home, boolean carriesVat) {
        OptionalLong replaced = imports.replacedBy(entry);
        if (replaced.isPresent()) {
            return Optional.of(
                    new DoubleClaims.Found(
                            replaced.getAsLong(),
                            "replaced",
                            "replaced by the amended document of its month that begins with entry %d"
                                    .formatted(replaced.getAsLong())));
        }
        OptionalLong same = imports.sameAs(entry);
        if (same.isPresent()) {
            return Optional.of(
                    new DoubleClaims.Found(
                            same.getAsLong(),
                            "met-again",
                            "the same import as entry %d: entry reference, date and VAT agree"
                                    .formatted(same.getAsLong())));
        }
        return doubles.of(entry, home, carriesVat)
                .filter(found -> !imports.isNoRepeat(entry, found.other()))
                .filter(found -> SupplierDocuments.isCredit(entry) || isRuled(entry, found));
    }

    /** Whether the tables have a rule for it: those an older close froze may know of no such. */
    private boolean isRuled(Entry entry, DoubleClaims.Found found) {
        return law.treatments().rows().stream()
                .map(row -> row.value().when())
                .anyMatch(
                        when ->
                                when.getOrDefault(Fact.CLAIMS, Set.of()).contains(found.claims())
                                        && when.getOrDefault(Fact.KIND, Set.of())
                                                .contains(entry.kind().code()));
    }
}
