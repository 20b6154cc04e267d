package quarterfold.intake;

import java.util.Optional;
import java.util.Set;

/**
 * A type of document (BT-3), of the codes of UNTDID 1001 that EN 16931 takes: rule BR-CL-01 of its
 * published artefacts, release 1.3.16. Which of them are self-billed, a pro forma or no VAT invoice
 * is from memory.
 *
 * @param code such as {@code 380}
 * @param credit whether it takes back what an invoice charged
 */
record InvoiceType(String code, boolean credit) {
    private static final Set<String> INVOICES =
            Set.of(
                    "71", "80", "82", "84", "102", "130", "202", "203", "204", "211", "218", "219",
                    "295", "325", "326", "331", "380", "382", "383", "384", "385", "386", "387",
                    "388", "389", "390", "393", "394", "395", "456", "457", "471", "472", "473",
                    "500", "501", "527", "553", "575", "623", "633", "751", "780", "817", "870",
                    "875", "876", "877", "935");
    private static final Set<String> CREDITS =
            Set.of(
                    "81", "83", "261", "262", "296", "308", "381", "396", "420", "458", "502",
                    "503", "532");
    private static final Set<String> SELF_BILLED =
            Set.of("261", "389", "471", "473", "500", "501", "502", "527");
    private static final String ADVANCE = "386";
    private static final String CORRECTED = "384";
    private static final String PRO_FORMA = "325";
    private static final String FOR_ACCOUNTING_ALONE = "751";

    static Optional<InvoiceType> of(String code) {
        if (INVOICES.contains(code)) {
            return Optional.of(new InvoiceType(code, false));
        }
        return CREDITS.contains(code) ? Optional.of(new InvoiceType(code, true)) : Optional.empty();
    }

    /** Whether the customer made it out. */
    boolean isSelfBilled() {
        return SELF_BILLED.contains(code);
    }

    /** Whether it charges an advance for a supply to come: a prepayment invoice. */
    boolean isAdvance() {
        return code.equals(ADVANCE);
    }

    /** Whether it takes the place of an invoice that it names: a corrected invoice. */
    boolean isCorrected() {
        return code.equals(CORRECTED);
    }

    /** Whether it announces a supply and charges nothing. */
    boolean isProForma() {
        return code.equals(PRO_FORMA);
    }

    /** Whether it is data about an invoice, which is another document. */
    boolean isForAccountingAlone() {
        return code.equals(FOR_ACCOUNTING_ALONE);
    }
}
