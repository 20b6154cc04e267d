package quarterfold.treatment;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import quarterfold.law.Law;
import quarterfold.ledger.Amounts;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Evidence;
import quarterfold.ledger.Kind;
import quarterfold.money.Amount;

/**
 * Import VAT that an agent or courier bills again: an expense of which the VAT, the value or the
 * whole is, to the penny, the VAT of an import entry with its certificate or statement, some days
 * before or after it; of goods the VAT alone, since an agent sells none.
 *
 * <p>The certificate is the normal evidence of import VAT paid (HMRC manual IMPS03100), and input
 * tax is never deducted twice: VAT Regulations 1995 reg 29(4). How many days is {@code
 * agent-import-vat} of {@code limits.csv}.
 */
final class ImportVatBilled {
    private static final String DAYS = "agent-import-vat";

    private final Law law;
    private final Map<Amount, List<Entry>> evidenced = new HashMap<>();

    ImportVatBilled(Law law) {
        this.law = law;
    }

    void add(Entry entry) {
        if (isImportVat(entry) && isEvidenced(entry)) {
            evidenced
                    .computeIfAbsent(SupplierDocuments.money(entry), vat -> new ArrayList<>())
                    .add(entry);
        }
    }

    /** The import entry whose VAT the entry seems to be. */
    Optional<Entry> of(Entry entry) {
        if (evidenced.isEmpty()) {
            return Optional.empty();
        }
        if (isImportVat(entry)) {
            return isEvidenced(entry)
                    ? Optional.empty()
                    : near(SupplierDocuments.money(entry), entry.taxPoint());
        }
        Amounts amounts = entry.amounts();
        return switch (entry.kind()) {
            case EXPENSE ->
                    near(
                            entry,
                            List.of(
                                    amounts.vat(),
                                    amounts.gross(),
                                    amounts.net(),
                                    Optional.of(amounts.money())));
            case PURCHASE -> near(entry, List.of(amounts.vat()));
            default -> Optional.empty();
        };
    }

    private Optional<Entry> near(Entry entry, List<Optional<Amount>> amounts) {
        return amounts.stream()
                .flatMap(Optional::stream)
                .filter(amount -> !amount.isZero())
                .flatMap(amount -> near(amount, entry.taxPoint()).stream())
                .findFirst();
    }

    private Optional<Entry> near(Amount amount, LocalDate day) {
        return evidenced.getOrDefault(amount, List.of()).stream()
                .filter(i -> isNear(i.taxPoint(), day))
                .findFirst();
    }

    private boolean isNear(LocalDate imported, LocalDate day) {
        return law.limit(DAYS, imported)
                .filter(
                        days ->
                                !day.isBefore(days.value().before(imported))
                                        && !day.isAfter(days.value().after(imported)))
                .isPresent();
    }

    private static boolean isImportVat(Entry entry) {
        return entry.kind() == Kind.IMPORT_VAT_PAID || entry.kind() == Kind.IMPORT_VAT_POSTPONED;
    }

    private static boolean isEvidenced(Entry entry) {
        Evidence evidence = entry.profile().evidence();
        return evidence == Evidence.IMPORT_CERTIFICATE || evidence == Evidence.POSTPONED_STATEMENT;
    }
}
