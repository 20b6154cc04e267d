package quarterfold.intake;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import quarterfold.money.Amount;
import quarterfold.money.Percent;

/**
 * An electronic invoice or credit note as the semantic model of EN 16931-1 has it, whatever its
 * syntax; of its terms those that tell of VAT, parties and days. Terms are named by their numbers
 * there. Amounts are as the document prints them: those of a credit note are positive.
 *
 * @param number BT-1
 * @param type BT-3
 * @param currency BT-5, that of every amount but {@code accountingVat}
 * @param profile BT-24, the specification the document says it keeps; or empty
 * @param deliveredTo BT-80, ISO 3166; or empty
 * @param representativeVat BT-63, the number of the seller's tax representative; or empty
 * @param items BG-25; none in a profile without lines
 * @param adjustments BG-20 and BG-21: allowances and charges of the document as a whole
 * @param breakdown BG-23, never empty
 * @param accountingVat BT-111 with the currency of BT-6
 * @param preceding BT-25, the numbers of earlier documents that it names
 * @param notes what else a person may want to see, as {@code name: text}
 */
record Invoice(
        String number,
        InvoiceType type,
        String currency,
        String profile,
        Days days,
        Party seller,
        Party buyer,
        String representativeVat,
        String deliveredTo,
        List<Item> items,
        List<Adjustment> adjustments,
        List<VatLine> breakdown,
        Totals totals,
        Optional<AccountingVat> accountingVat,
        List<String> preceding,
        List<String> notes) {

    Invoice {
        items = List.copyOf(items);
        adjustments = List.copyOf(adjustments);
        breakdown = List.copyOf(breakdown);
        preceding = List.copyOf(preceding);
        notes = List.copyOf(notes);
    }

    /** The same with more notes. */
    Invoice noted(List<String> more) {
        return new Invoice(
                number,
                type,
                currency,
                profile,
                days,
                seller,
                buyer,
                representativeVat,
                deliveredTo,
                items,
                adjustments,
                breakdown,
                totals,
                accountingVat,
                preceding,
                Stream.concat(notes.stream(), more.stream()).toList());
    }

    /**
     * @param issued BT-2
     * @param taxPoint BT-7
     * @param due BT-9
     * @param delivered BT-72
     */
    record Days(
            LocalDate issued,
            Optional<LocalDate> taxPoint,
            Optional<LocalDate> due,
            Optional<LocalDate> delivered) {}

    /**
     * @param name BT-27 or BT-44
     * @param vat BT-31 or BT-48, as written; or empty
     * @param country BT-40 or BT-55, ISO 3166; or empty
     */
    record Party(String name, String vat, String country) {}

    /**
     * @param name BT-153
     * @param net BT-131
     * @param tax BT-151 and BT-152
     */
    record Item(String name, Amount net, Tax tax) {}

    /**
     * An allowance or a charge.
     *
     * @param amount BT-92 or BT-99
     * @param tax BT-95 and BT-96, or BT-102 and BT-103
     */
    record Adjustment(boolean charge, Amount amount, Tax tax) {}

    /**
     * A VAT category with its rate.
     *
     * @param rate none where the category has none, such as what is not subject to VAT
     */
    record Tax(VatCategory category, Optional<Percent> rate) {

        /** Whether the breakdown counts both as one: a rate tells apart where there is VAT. */
        boolean isOneWith(Tax other) {
            return category == other.category && (!category.isTaxed() || rate.equals(other.rate));
        }
    }

    /**
     * One line of the VAT breakdown.
     *
     * @param line of the file
     * @param net BT-116
     * @param vat BT-117
     * @param reason BT-120, or BT-121 where that is blank
     */
    record VatLine(int line, Amount net, Amount vat, Tax tax, String reason) {}

    /**
     * @param lines BT-106
     * @param allowances BT-107
     * @param charges BT-108
     * @param net BT-109
     * @param vat BT-110
     * @param gross BT-112
     * @param paid BT-113
     * @param rounding BT-114
     * @param due BT-115
     */
    record Totals(
            Amount lines,
            Optional<Amount> allowances,
            Optional<Amount> charges,
            Amount net,
            Optional<Amount> vat,
            Amount gross,
            Optional<Amount> paid,
            Optional<Amount> rounding,
            Amount due) {}

    /** The total VAT in the currency of the seller's or buyer's VAT accounts. */
    record AccountingVat(String currency, Amount amount) {}
}
