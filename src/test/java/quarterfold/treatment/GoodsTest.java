package quarterfold.treatment;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import quarterfold.ledger.Bundles;
import quarterfold.ledger.Products;
import quarterfold.money.Amount;

class GoodsTest {

    private static final LocalDate LAST = LocalDate.of(2026, 6, 30);

    private static final Goods GOODS =
            new Goods(
                    Products.parse("product,liability,from,to\nBOOK,zero,,2026-06-30\n"),
                    Bundles.parse(
                            """
                            bundle,product,shelf_price,from,to
                            SET,BOOK,5.00,,2026-06-30
                            SET,TOY,10.00,,2026-06-30
                            """));

    @Test
    void aProductHasItsLiabilityOnADay() {
        assertThat(GOODS.liability("BOOK", LAST)).contains("zero");
        assertThat(GOODS.liability("BOOK", LAST.plusDays(1))).isEmpty();
        assertThat(GOODS.liability("TOY", LAST)).isEmpty();
    }

    @Test
    void aBundleHasItsPartsOnADay() {
        assertThat(GOODS.parts("SET", LAST))
                .containsExactly(
                        new Bundles.Part("BOOK", Amount.of("5")),
                        new Bundles.Part("TOY", Amount.of("10")));
        assertThat(GOODS.parts("SET", LAST.plusDays(1))).isEmpty();
        assertThat(GOODS.parts("BOOK", LAST)).isEmpty();
    }
}
