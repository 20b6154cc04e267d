package quarterfold.law;

/**
 * One thing a document must show: a row of {@code evidence-shows.csv}.
 *
 * @param evidence the kind of document, by its code in {@code evidence.csv}, or {@code credit-note}
 * @param code what it shows, such as {@code supplier-vat-number}
 * @param when the only case in which it must, such as {@code reverse-charge}; empty for always
 * @param words the same for a person to read
 */
public record Particular(String evidence, String code, String when, String words) {

    static Particular of(Table.Row row) {
        return new Particular(
                row.needed("evidence"),
                row.needed("particular"),
                row.cell("when"),
                row.needed("words"));
    }

    /** The evidence and what it shows, of which one row is in force on a day. */
    String name() {
        return evidence + " " + code;
    }
}
