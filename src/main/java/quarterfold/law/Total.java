package quarterfold.law;

/**
 * A sum over entries that is no box of the form but that a figure is worked out from: a row of
 * {@code totals.csv}. What feeds it is in {@code boxes.csv}, where it stands in a box's place.
 *
 * @param name such as {@code flat-rate-turnover}
 * @param words its heading in the papers
 */
public record Total(String name, String words) {

    static Total of(Table.Row row) {
        return new Total(row.needed("total"), row.needed("words"));
    }
}
