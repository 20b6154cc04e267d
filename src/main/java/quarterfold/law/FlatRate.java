package quarterfold.law;

import quarterfold.money.Percent;

/**
 * What a trade pays under the flat-rate scheme: a row of {@code flat-rates.csv}.
 *
 * @param id the tax authority's number of the sector, three digits such as {@code 044}
 * @param sector the sector in words
 * @param percent of turnover with VAT, before any reduction for a first year
 */
public record FlatRate(String id, String sector, Percent percent) {

    static FlatRate of(Table.Row row) {
        return new FlatRate(
                row.needed("id"),
                row.needed("sector"),
                row.parse("percent", Percent::of, "a percentage such as 7.5"));
    }
}
