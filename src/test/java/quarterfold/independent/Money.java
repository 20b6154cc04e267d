package quarterfold.independent;

import java.math.BigDecimal;
import java.time.LocalDate;

/**
 * Money that moves and is no supply: payouts, transfers, what a channel keeps back, loans, wages,
 * compensation for lost stock (VATSC61800), lines of bank statements, and fees seen only on a
 * settlement, whose invoice is what counts. All of it is nowhere; but relief for a debt that went
 * bad is in box 4 (VAT Notice 700/18; VBDR2300).
 */
final class Money implements Category {

    @Override
    public boolean fits(Trader trader, LocalDate day) {
        return true;
    }

    @Override
    public void happen(Dice dice, Trader trader, LocalDate day, Sheets sheets) {
        BigDecimal amount = dice.pounds();
        String text = (dice.oneIn(3) ? amount.negate() : amount).toPlainString();
        switch (dice.between(1, 6)) {
            case 1 ->
                    sheets.row(day, dice.of("fee", "fee-refund"))
                            .put("gross", amount.toPlainString())
                            .put("channel", "Example channel")
                            .put("settlement", "S-1");
            case 2 -> {
                BigDecimal rate =
                        dice.oneIn(3)
                                ? Vat.REDUCED
                                : Vat.standard(day.minusMonths(dice.between(6, 40)));
                sheets.row(day, "other-money")
                        .put("category", "bad-debt-relief")
                        .put("gross", amount.toPlainString())
                        .put("rate", rate.toPlainString());
                sheets.box(day, 4, Vat.inside(amount, rate, trader));
            }
            default ->
                    sheets.row(
                                    day,
                                    dice.of(
                                            "payout",
                                            "reserve",
                                            "compensation",
                                            "transfer",
                                            "bank-line",
                                            "other-money"))
                            .put("gross", text)
                            .put("description", dice.of("", "Wages", "Loan"));
        }
    }
}
