package quarterfold.independent;

import java.math.BigDecimal;
import java.time.LocalDate;

/**
 * Import VAT with its certificate, and a bill of the agent who paid it. The certificate is the
 * evidence (IMPS03100), and input tax is deducted once (VAT Regulations 1995 reg 29(4)), so the
 * bill is in no box until a person says what it is.
 */
final class AgentsBills implements Category {

    @Override
    public boolean fits(Trader trader, LocalDate day) {
        return true;
    }

    @Override
    public void happen(Dice dice, Trader trader, LocalDate day, Sheets sheets) {
        BigDecimal rate = Vat.standard(day);
        BigDecimal net = Imports.value(dice);
        BigDecimal vat = Vat.onTop(net, rate);
        sheets.row(day, "import-vat-paid")
                .put("net", net.toPlainString())
                .put("vat", vat.toPlainString())
                .put("evidence", "import-certificate");
        sheets.box(day, 4, vat);
        if (trader.chose("import-value-from", "import-entry")) {
            sheets.box(day, 7, net);
        }
        Sheets.Row bill =
                sheets.row(day, "expense")
                        .put("party", "Example courier")
                        .put("party_country", dice.of("GB", ""))
                        .put("party_vat", "GB101747696")
                        .put("evidence", dice.of("invoice", "simplified", "missing"));
        switch (dice.between(1, 3)) {
            case 1 -> bill.put("net", net.toPlainString()).put("vat", vat.toPlainString());
            case 2 -> bill.put("gross", vat.toPlainString()).put("rate", rate.toPlainString());
            default ->
                    bill.put("net", vat.toPlainString())
                            .put("vat", Vat.onTop(vat, rate).toPlainString());
        }
    }
}
