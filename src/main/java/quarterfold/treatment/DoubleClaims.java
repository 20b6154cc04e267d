package quarterfold.treatment;

import java.time.YearMonth;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import quarterfold.law.Law;
import quarterfold.ledger.Decision;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Profile;
import quarterfold.money.Amount;

/**
 * Which purchases and imports seem to claim what another entry of the ledger claims, from whatever
 * kind of file either came: a document entered twice, import VAT billed again by an agent, a
 * channel's invoice for fees claimed on its settlements, an advance and the invoice for the whole,
 * a copy with other amounts or another number.
 *
 * <p>VAT Regulations 1995 reg 29(4): input tax is never deducted twice. One of the two feeds the
 * boxes until a person has said which; what was decided to be a duplicate is passed over.
 */
public final class DoubleClaims {

    private final SupplierDocuments numbered = new SupplierDocuments();
    private final UnnumberedDocuments unnumbered = new UnnumberedDocuments();
    private final ImportVatBilled importVat;
    private final ChannelParties channels = new ChannelParties();
    private final FeeLines feeLines;
    private final Advances advances = new Advances();
    private final OtherCopies copies = new OtherCopies();

    /**
     * What an entry seems to claim again.
     *
     * @param other the entry that claims it, by its number
     * @param claims a word of {@link quarterfold.law.Fact#CLAIMS}
     * @param reason for the grade of the evidence
     * @param words for its question, beside the entry
     */
    record Found(long other, String claims, String reason, Map<String, String> words) {

        Found(long other, String claims, String reason) {
            this(other, claims, reason, Map.of());
        }

        /** Whether it is no question: the two are one import. */
        boolean isSure() {
            return claims.equals("met-again") || claims.equals("replaced");
        }
    }

    /** What is known of entries beside themselves. */
    public interface Known {
        /**
         * What closed returns have claimed of an entry, by its number; empty where that is not
         * above zero.
         */
        Optional<Claim> claimed(long entry);

        /** The layout a source was read with, which tells one kind of file from another. */
        default String layout(long source) {
            return "";
        }
    }

    /**
     * VAT of an entry that closed returns have claimed.
     *
     * @param in the period of the first of them
     * @param vat above zero, in sterling
     */
    public record Claim(YearMonth in, Amount vat) {}

    /** Of a ledger without purchases and imports. */
    DoubleClaims(Law law) {
        this(law, ImportStatements.NONE);
    }

    private DoubleClaims(Law law, ImportStatements imports) {
        importVat = new ImportVatBilled(law, imports);
        feeLines = new FeeLines(law, channels);
    }

    /**
     * The claims of a ledger.
     *
     * @param scan shows at least the entries of which {@link #mayConcern} says so, in the order of
     *     their numbers
     * @param known what is known of entries beside themselves
     * @param imports which lines of certificates and statements count
     */
    static DoubleClaims of(
            Together.Scan scan, Law law, Answers answers, Known known, ImportStatements imports) {
        DoubleClaims all = new DoubleClaims(law, imports);
        Set<Long> decided = new HashSet<>();
        Set<Long> named = new HashSet<>();
        scan.forEach(
                entry -> {
                    if (SupplierDocuments.isWeighed(entry)) {
                        Answered answered = Answered.of(entry, answers);
                        if (!answered.decided().equals("duplicate")) {
                            all.add(answered.entry());
                            if (answered.treatment().isEmpty()) {
                                all.importVat.addUndecided(answered.entry());
                                all.feeLines.addUndecided(answered.entry());
                            } else {
                                decided.add(entry.number());
                            }
                        } else {
                            named.addAll(duplicateOf(entry, answers));
                        }
                    }
                });
        all.numbered.compare();
        List<List<Entry>> documents = all.numbered.rows();
        all.copies.compare(documents, all.numbered.repeats(), decided, named, known);
        all.numbered.leaveOut(all.copies.and(Set.of()));
        Set<Long> waiting = all.copies.and(all.numbered.repeats().keySet());
        all.unnumbered.compare(documents, waiting);
        all.importVat.compare(known);
        all.advances.compare(documents, waiting);
        return all;
    }

    /** The entries that a person has said the entry is a duplicate of. */
    private static List<Long> duplicateOf(Entry entry, Answers answers) {
        return answers.about(entry).stream()
                .filter(d -> d.action() == Decision.Action.DUPLICATE_OF)
                .map(d -> Long.valueOf(d.value()))
                .toList();
    }

    /** Whether entries of the profile may claim VAT: purchases and imports. */
    public static boolean mayConcern(Profile profile) {
        Kind.Side side = profile.kind().side();
        return side == Kind.Side.IMPORTS
                || (side == Kind.Side.PURCHASES && SupplierDocuments.isWeighed(profile));
    }

    private void add(Entry entry) {
        if (SupplierDocuments.isOfDocument(entry)) {
            numbered.add(entry);
        }
        unnumbered.add(entry);
        importVat.add(entry);
        channels.add(entry.profile());
        feeLines.add(entry);
    }

    /** Who charges the fees of which channel. */
    public ChannelParties channels() {
        return channels;
    }

    /**
     * The invoices for fees that are claimed on settlements too, by their numbers, but for those of
     * which a person has said how they are treated.
     */
    public Set<Long> feesClaimedAgain() {
        return feeLines.claimedAgain();
    }

    /** The bills without a claim that may be the VAT of an import entered after them. */
    public Set<Long> importVatBilledBefore() {
        return importVat.billedBefore();
    }

    SupplierDocuments documents() {
        return numbered;
    }

    /**
     * What the entry seems to claim again.
     *
     * @param home whether its supplier charges VAT of this country, where it charges any
     * @param carriesVat whether it charges VAT at all
     */
    Optional<Found> of(Entry entry, boolean home, boolean carriesVat) {
        Optional<Found> copy = copies.of(entry).map(DoubleClaims::copy);
        OptionalLong document = numbered.earlier(entry);
        if (document.isEmpty()) {
            document = unnumbered.earlier(entry);
        }
        if (copy.isEmpty() && document.isPresent()) {
            return Optional.of(
                    new Found(
                            document.getAsLong(),
                            "repeated",
                            "seems to be entered before, as entry %d"
                                    .formatted(document.getAsLong())));
        }
        return copy.or(() -> importVat.claimedBefore(entry).map(DoubleClaims::onBill))
                .or(() -> home ? importVat(entry, carriesVat) : Optional.empty())
                .or(() -> home && carriesVat ? others(entry) : Optional.empty());
    }

    private static Found copy(OtherCopies.Copy copy) {
        return new Found(
                copy.other(),
                "other-copy",
                "seems to be another copy of the document of entry %d: %s"
                        .formatted(copy.other(), copy.how()),
                words(copy));
    }

    private static Map<String, String> words(OtherCopies.Copy copy) {
        Map<String, String> words = new HashMap<>(copy.words());
        words.put("of", copy.how());
        return words;
    }

    private static Found onBill(ImportVatBilled.Claimed bill) {
        return new Found(
                bill.bill(),
                "on-bill",
                "its VAT seems to be claimed on entry %d, a bill in the closed return of %s"
                        .formatted(bill.bill(), bill.in()),
                Map.of("of", bill.in().toString()));
    }

    private Optional<Found> others(Entry entry) {
        return fees(entry).or(() -> advance(entry));
    }

    private Optional<Found> importVat(Entry entry, boolean carriesVat) {
        String claims = entry.kind().side() == Kind.Side.IMPORTS ? "repeated" : "import-vat";
        return importVat
                .of(entry, carriesVat)
                .map(
                        i ->
                                new Found(
                                        i.number(),
                                        claims,
                                        "seems to be the import VAT of entry %d"
                                                .formatted(i.number())));
    }

    private Optional<Found> fees(Entry entry) {
        OptionalLong line = feeLines.of(entry);
        return line.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        new Found(
                                line.getAsLong(),
                                "fee-lines",
                                "its fees seem to be claimed on settlements, such as entry %d"
                                        .formatted(line.getAsLong())));
    }

    private Optional<Found> advance(Entry entry) {
        return advances.of(entry)
                .map(
                        found ->
                                new Found(
                                        found.other(),
                                        "advance",
                                        "it and entry %d seem to be an advance and the invoice that charges its VAT again"
                                                .formatted(found.other()),
                                        Map.of("keep", found.keep())));
    }
}
