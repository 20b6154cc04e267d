package quarterfold.treatment;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import quarterfold.law.Dated;
import quarterfold.law.Law;
import quarterfold.law.Particular;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Kind;
import quarterfold.ledger.StatedRate;
import quarterfold.money.Percent;

/**
 * Holds what an entry states of its document against what such a document must show: {@code
 * evidence-shows.csv}. What no entry can state, such as the price of one unit, is left for a person
 * to see on the document.
 */
final class DocumentShows {

    private static final Set<String> OF_TAXED_SUPPLIES =
            Set.of("supplier-vat-number", "rate", "total-vat", "vat-by-rate", "vat");

    private final Law law;

    DocumentShows(Law law) {
        this.law = law;
    }

    /**
     * @param missing what the document must show and the entry could state, but does not
     */
    record Shown(List<String> missing) {

        boolean isComplete() {
            return missing.isEmpty();
        }

        boolean lacks(String particular) {
            return missing.contains(particular);
        }
    }

    /** What the entry states, adding it to the reasons in words. */
    Shown of(Entry entry, List<String> reasons) {
        String kind =
                SupplierDocuments.isCredit(entry)
                        ? "credit-note"
                        : entry.profile().evidence().code();
        List<String> stated = new ArrayList<>();
        List<String> missing = new ArrayList<>();
        List<String> toSee = new ArrayList<>();
        for (Dated<Particular> row : law.particulars(kind, entry.taxPoint())) {
            Particular particular = row.value();
            if (!applies(particular, entry)) {
                continue;
            }
            Optional<Boolean> states = states(particular.code(), entry);
            (states.isEmpty() ? toSee : states.get() ? stated : missing).add(particular.code());
        }
        told("entered: ", stated, reasons);
        told("not entered: ", missing, reasons);
        told("to be seen on the document: ", toSee, reasons);
        return new Shown(List.copyOf(missing));
    }

    private static void told(String what, List<String> particulars, List<String> reasons) {
        if (!particulars.isEmpty()) {
            reasons.add(
                    what
                            + String.join(
                                    ", ", particulars.stream().map(DocumentShows::words).toList()));
        }
    }

    private static String words(String code) {
        return code.replace('-', ' ').replace("vat", "VAT").replace("eori", "EORI");
    }

    /** A document from abroad shows no United Kingdom number, and one without VAT no VAT. */
    private boolean applies(Particular particular, Entry entry) {
        boolean when =
                switch (particular.when()) {
                    case "" -> true;
                    case "reverse-charge" ->
                            entry.profile().rate().equals(StatedRate.REVERSE_CHARGE);
                    case "margin-scheme" -> entry.profile().rate().equals(StatedRate.MARGIN);
                    default -> false;
                };
        return when && (!OF_TAXED_SUPPLIES.contains(particular.code()) || mayCarryVat(entry));
    }

    private boolean mayCarryVat(Entry entry) {
        if (entry.kind().side() == Kind.Side.IMPORTS) {
            return true;
        }
        String country = entry.profile().partyCountry();
        String area = country.isEmpty() ? "gb" : law.area(country, entry.taxPoint());
        boolean free =
                entry.profile().rate().isStated()
                        && entry.profile().rate().percent().map(Percent::isZero).orElse(true);
        return (area.equals("gb") || area.equals("ni")) && !free;
    }

    /** Whether the entry states it; empty for what an entry cannot state. */
    private static Optional<Boolean> states(String particular, Entry entry) {
        return switch (particular) {
            case "number", "entry-reference", "entry-number" -> is(entry.line().document());
            case "tax-point", "entry-date", "accounting-date", "month" -> Optional.of(true);
            case "supplier" -> is(entry.profile().party() + entry.profile().channel());
            case "supplier-vat-number",
                            "supplier-registered",
                            "importer",
                            "importer-vat-number",
                            "importer-eori" ->
                    is(entry.profile().partyVat());
            case "customer" ->
                    Optional.of(
                            entry.line()
                                    .particulars()
                                    .word(quarterfold.ledger.Particular.ADDRESSED)
                                    .isPresent());
            case "description" ->
                    is(
                            Stream.of(
                                            entry.line().item().description(),
                                            entry.line().item().product(),
                                            entry.profile().category())
                                    .reduce("", String::concat));
            case "rate" ->
                    Optional.of(
                            entry.profile().rate().isStated() || entry.amounts().vat().isPresent());
            case "net", "total-net" ->
                    Optional.of(
                            entry.amounts().net().isPresent()
                                    || (entry.amounts().gross().isPresent()
                                            && entry.amounts().vat().isPresent()));
            case "total-vat", "vat" -> Optional.of(entry.amounts().vat().isPresent());
            case "total-gross", "gross-by-rate" -> Optional.of(!entry.amounts().money().isZero());
            case "spent" -> Optional.of(entry.line().paid().isPresent());
            case "issue-date" ->
                    entry.line()
                            .particulars()
                            .day(quarterfold.ledger.Particular.INVOICED)
                            .map(d -> true);
            default -> Optional.empty();
        };
    }

    private static Optional<Boolean> is(String text) {
        return Optional.of(!text.isEmpty());
    }
}
