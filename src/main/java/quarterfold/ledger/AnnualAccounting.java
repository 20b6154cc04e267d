package quarterfold.ledger;

import java.time.LocalDate;
import java.util.Locale;
import quarterfold.money.Amount;

/**
 * The annual accounting scheme: one return a year, with instalments on the way (VAT Regulations
 * 1995 Part VII).
 *
 * @param from first day of the first year under it; a period begins then
 * @param lastYearVat the VAT of the year before, which the instalments are a share of
 */
public record AnnualAccounting(LocalDate from, Instalments instalments, Amount lastYearVat) {

    /** How often an instalment is paid. */
    public enum Instalments {
        MONTHLY,
        QUARTERLY;

        /** The word for it in settings and tables, such as {@code monthly}. */
        public String code() {
            return name().toLowerCase(Locale.ROOT);
        }
    }
}
