package quarterfold.law;

import java.util.Locale;

/**
 * A line of the VAT account (VAT Regulations 1995 reg 32): a row of {@code account.csv}.
 *
 * @param account its name, such as {@code output-tax}
 * @param label the line in words
 */
public record AccountLine(String account, Portion portion, String label) {

    /** The account's two portions. */
    public enum Portion {
        PAYABLE,
        ALLOWABLE;

        /** Such as {@code payable}. */
        public String code() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    static AccountLine of(Table.Row row) {
        return new AccountLine(
                row.needed("account"),
                row.parse(
                        "portion",
                        t -> Portion.valueOf(t.toUpperCase(Locale.ROOT)),
                        "payable or allowable"),
                row.needed("label"));
    }

    /** What no other row in force on the same day may have. */
    String name() {
        return account + " " + portion.code();
    }
}
