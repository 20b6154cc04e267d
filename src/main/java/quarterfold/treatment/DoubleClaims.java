package quarterfold.treatment;

import java.time.YearMonth;
import java.util.Optional;
import java.util.OptionalLong;
import quarterfold.law.Law;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Profile;
import quarterfold.money.Amount;

/**
 * Which purchases and imports seem to claim what another entry of the ledger claims, from whatever
 * kind of file either came: a document entered twice, import VAT billed again by an agent, a
 * channel's invoice for fees claimed on its settlements, an advance and the invoice for the whole.
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

    /**
     * What an entry seems to claim again.
     *
     * @param other the entry that claims it, by its number
     * @param claims a word of {@link quarterfold.law.Fact#CLAIMS}
     * @param reason for the grade of the evidence
     * @param of the closed period that has claimed it, or empty
     */
    record Found(long other, String claims, String reason, String of) {

        Found(long other, String claims, String reason) {
            this(other, claims, reason, "");
        }

        /** Whether it is no question: the two are one import. */
        boolean isSure() {
            return claims.equals("met-again") || claims.equals("replaced");
        }
    }

    /** What closed returns have claimed. */
    public interface Closed {
        /** What is claimed of an entry, by its number; empty where that is not above zero. */
        Optional<Claim> claimed(long entry);
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
     * @param closed what closed returns have claimed
     * @param imports which lines of certificates and statements count
     */
    static DoubleClaims of(
            Together.Scan scan, Law law, Answers answers, Closed closed, ImportStatements imports) {
        DoubleClaims all = new DoubleClaims(law, imports);
        scan.forEach(
                entry -> {
                    if (SupplierDocuments.isWeighed(entry)) {
                        Answered answered = Answered.of(entry, answers);
                        if (!answered.decided().equals("duplicate")) {
                            all.add(answered.entry());
                            if (answered.treatment().isEmpty()) {
                                all.importVat.addUndecided(answered.entry());
                            }
                        }
                    }
                });
        all.numbered.compare();
        all.unnumbered.compare(all.numbered.rows(), all.numbered.repeated());
        all.importVat.compare(closed);
        all.advances.compare(all.numbered.rows(), all.numbered.repeated());
        return all;
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

    SupplierDocuments documents() {
        return numbered;
    }

    /**
     * What the entry seems to claim again.
     *
     * @param carriesVat whether it charges VAT of this country at all
     */
    Optional<Found> of(Entry entry, boolean carriesVat) {
        OptionalLong document = numbered.earlier(entry);
        if (document.isEmpty()) {
            document = unnumbered.earlier(entry);
        }
        if (document.isPresent()) {
            return Optional.of(
                    new Found(
                            document.getAsLong(),
                            "repeated",
                            "seems to be entered before, as entry %d"
                                    .formatted(document.getAsLong())));
        }
        return importVat
                .claimedBefore(entry)
                .map(DoubleClaims::onBill)
                .or(() -> carriesVat ? others(entry) : Optional.empty());
    }

    private static Found onBill(ImportVatBilled.Claimed bill) {
        return new Found(
                bill.bill(),
                "on-bill",
                "its VAT seems to be claimed on entry %d, a bill in the closed return of %s"
                        .formatted(bill.bill(), bill.in()),
                bill.in().toString());
    }

    private Optional<Found> others(Entry entry) {
        return importVat(entry).or(() -> fees(entry)).or(() -> advance(entry));
    }

    private Optional<Found> importVat(Entry entry) {
        String claims = entry.kind().side() == Kind.Side.IMPORTS ? "repeated" : "import-vat";
        return importVat
                .of(entry)
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
        OptionalLong other = advances.of(entry);
        return other.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        new Found(
                                other.getAsLong(),
                                "advance",
                                "it and entry %d seem to be an advance and the invoice that charges its VAT again"
                                        .formatted(other.getAsLong())));
    }
}
