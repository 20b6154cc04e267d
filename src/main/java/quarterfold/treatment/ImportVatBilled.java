package quarterfold.treatment;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import quarterfold.law.Law;
import quarterfold.ledger.Amounts;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Evidence;
import quarterfold.ledger.Kind;
import quarterfold.ledger.StatedRate;
import quarterfold.money.Amount;

/**
 * Import VAT that an agent or courier bills again: an expense of which the VAT, the value or the
 * whole is, to the penny, the VAT of an import entry with its certificate or statement, some days
 * before or after it; of goods bought with VAT the VAT alone, since an agent sells none. The bill
 * waits, but for one whose VAT a closed return has claimed: then the import that is entered after
 * it does, if its VAT was paid; postponed VAT is paid to no agent, and is due in box 1 whatever is
 * claimed.
 *
 * <p>The certificate is the normal evidence of import VAT paid (HMRC manual IMPS03100), and input
 * tax is never deducted twice: VAT Regulations 1995 reg 29(4). How many days is {@code
 * agent-import-vat} of {@code limits.csv}.
 */
final class ImportVatBilled {
    private static final String DAYS = "agent-import-vat";

    private final Law law;
    private final ImportStatements imports;
    private final Map<Amount, List<Entry>> evidenced = new HashMap<>();
    private final List<Entry> bills = new ArrayList<>();
    private final Set<Long> open = new HashSet<>();
    private final Map<Long, Claimed> claimed = new HashMap<>();
    private final Set<Long> claimedBills = new HashSet<>();
    private final Set<Long> billedBefore = new HashSet<>();

    /** A bill whose VAT a closed return has claimed. */
    record Claimed(long bill, YearMonth in) {}

    ImportVatBilled(Law law, ImportStatements imports) {
        this.law = law;
        this.imports = imports;
    }

    void add(Entry entry) {
        if (isImportVat(entry) && isEvidenced(entry) && imports.counts(entry)) {
            evidenced
                    .computeIfAbsent(SupplierDocuments.money(entry), vat -> new ArrayList<>())
                    .add(entry);
        }
    }

    /** Adds what may be an agent's bill or import VAT paid on one, as nobody has said otherwise. */
    void addUndecided(Entry entry) {
        if (entry.kind() == Kind.EXPENSE || entry.kind() == Kind.PURCHASE) {
            bills.add(entry);
        } else if (entry.kind() == Kind.IMPORT_VAT_PAID) {
            open.add(entry.number());
        }
    }

    /** Looks for imports that were entered after a close claimed them on a bill. */
    void compare(DoubleClaims.Known known) {
        for (Entry bill : bills) {
            if (all(bill, true).anyMatch(i -> i.number() > bill.number())) {
                known.claimed(bill.number()).ifPresent(claim -> hold(bill, claim));
            }
            if (!claimedBills.contains(bill.number())
                    && all(bill, false).anyMatch(i -> i.number() > bill.number())) {
                billedBefore.add(bill.number());
            }
        }
    }

    /**
     * The bills on which no return has claimed VAT and that may be the VAT of an import entered
     * after them, by their numbers: their value may be in box 7 of a closed return.
     */
    Set<Long> billedBefore() {
        return Set.copyOf(billedBefore);
    }

    /** One bill is for one import, and for one of as much VAT as was claimed on it. */
    private void hold(Entry bill, DoubleClaims.Claim claim) {
        claimedBills.add(bill.number());
        all(bill, true)
                .filter(i -> i.number() > bill.number() && open.contains(i.number()))
                .filter(i -> !claimed.containsKey(i.number()))
                .filter(i -> SupplierDocuments.money(i).equals(claim.vat()))
                .findFirst()
                .ifPresent(i -> claimed.put(i.number(), new Claimed(bill.number(), claim.in())));
    }

    /** The bill on which a closed return has claimed an import entered after it. */
    Optional<Claimed> claimedBefore(Entry imported) {
        return Optional.ofNullable(claimed.get(imported.number()));
    }

    /**
     * The import entry whose VAT the entry seems to be. What a closed return has claimed stands, so
     * its bill is that of no import entered after it: the import waits, or a person has decided.
     *
     * @param carriesVat whether the entry charges VAT
     */
    Optional<Entry> of(Entry entry, boolean carriesVat) {
        if (evidenced.isEmpty()) {
            return Optional.empty();
        }
        if (isImportVat(entry)) {
            return isEvidenced(entry) || !carriesVat
                    ? Optional.empty()
                    : near(SupplierDocuments.money(entry), entry.taxPoint()).findFirst();
        }
        boolean stands = claimedBills.contains(entry.number());
        return all(entry, carriesVat)
                .filter(i -> !stands || i.number() < entry.number())
                .findFirst();
    }

    /**
     * Every import whose VAT a bill may be. What is bought without VAT may be VAT laid out,
     * whatever it is entered as, but for what the customer accounts for.
     */
    private Stream<Entry> all(Entry bill, boolean carriesVat) {
        Amounts amounts = bill.amounts();
        boolean laidOut =
                (!carriesVat || amounts.vat().filter(Amount::isZero).isPresent())
                        && !bill.profile().rate().equals(StatedRate.REVERSE_CHARGE);
        Stream<Optional<Amount>> any =
                switch (bill.kind()) {
                    case EXPENSE -> anyOf(amounts);
                    case PURCHASE -> laidOut ? anyOf(amounts) : Stream.of(amounts.vat());
                    default -> Stream.of();
                };
        return any.flatMap(Optional::stream)
                .filter(amount -> !amount.isZero())
                .flatMap(amount -> near(amount, bill.taxPoint()));
    }

    private static Stream<Optional<Amount>> anyOf(Amounts amounts) {
        return Stream.of(
                amounts.vat(), amounts.gross(), amounts.net(), Optional.of(amounts.money()));
    }

    private Stream<Entry> near(Amount amount, LocalDate day) {
        return evidenced.getOrDefault(amount, List.of()).stream()
                .filter(i -> isNear(i.taxPoint(), day));
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
