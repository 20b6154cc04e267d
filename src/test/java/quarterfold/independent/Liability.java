package quarterfold.independent;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Goods by how they are taxed: the sheet states the rate, or names a product of the list. */
enum Liability {
    STANDARD("P-STANDARD"),
    REDUCED("P-REDUCED"),
    ZERO("P-ZERO"),
    /** Of another liability before 2021, as sanitary products were (SI 2020/1642). */
    ZERO_SINCE_2021("P-CHANGED"),
    EXEMPT("P-EXEMPT"),
    OUTSIDE("P-OUTSIDE");

    static final String PRODUCTS =
            """
            product,liability,from,to
            P-STANDARD,standard,,
            P-REDUCED,reduced,,
            P-ZERO,zero,,
            P-CHANGED,reduced,,2020-12-31
            P-CHANGED,zero,2021-01-01,
            P-OUTSIDE,outside,,
            """;

    /** The same with exempt goods, beside which partial exemption is looked at. */
    static final String WITH_EXEMPT = PRODUCTS + "P-EXEMPT,exempt,,\n";

    /** Without exempt goods, beside which not all input tax may be deducted. */
    static final List<Liability> NOT_EXEMPT =
            List.of(STANDARD, REDUCED, ZERO, ZERO_SINCE_2021, OUTSIDE);

    private final String product;

    Liability(String product) {
        this.product = product;
    }

    /** The rate of a supply on the day; nothing where it is exempt or outside the scope. */
    Optional<BigDecimal> rate(LocalDate day) {
        return switch (this) {
            case STANDARD -> Optional.of(Vat.standard(day));
            case REDUCED -> Optional.of(Vat.REDUCED);
            case ZERO -> Optional.of(Vat.NONE);
            case ZERO_SINCE_2021 -> Optional.of(day.getYear() < 2021 ? Vat.REDUCED : Vat.NONE);
            case EXEMPT, OUTSIDE -> Optional.empty();
        };
    }

    /** What the sheet says of the goods: the rate, the product, or both. */
    Map<String, String> cells(Dice dice, LocalDate day) {
        if (dice.oneIn(2)) {
            return Map.of("product", product);
        }
        return Map.of(
                "rate",
                rate(day)
                        .map(BigDecimal::toPlainString)
                        .orElse(this == EXEMPT ? "exempt" : "outside"));
    }
}
