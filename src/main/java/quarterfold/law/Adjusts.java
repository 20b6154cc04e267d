package quarterfold.law;

/**
 * What a return may take up beside its entries: a row of {@code adjustments.csv}. Which boxes it
 * moves is in {@code boxes.csv}, under the same name.
 *
 * @param name such as {@code partial-exemption}
 * @param why the rule in words
 */
public record Adjusts(String name, String why) {

    static Adjusts of(Table.Row row) {
        return new Adjusts(row.needed("name"), row.needed("why"));
    }
}
