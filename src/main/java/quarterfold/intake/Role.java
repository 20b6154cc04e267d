package quarterfold.intake;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What a column of a report is for. The constants are the roles in {@code words/columns.csv}. */
enum Role {
    DATE(Field.DATE),
    PAID(Field.PAID),
    SETTLEMENT(Field.SETTLEMENT),
    ORDER(Field.ORDER),
    DOCUMENT(Field.DOCUMENT),
    PRODUCT(Field.PRODUCT),
    DESCRIPTION(Field.DESCRIPTION),
    CURRENCY(Field.CURRENCY),
    FROM(Field.FROM),
    TO(Field.TO),
    SUPPLIER(Field.PARTY),
    CUSTOMER(Field.PARTY),
    COUNTERPARTY(Field.PARTY),
    ACCOUNT(Field.ACCOUNT),
    RATE(Field.RATE),
    TYPE,
    PART,
    /** The text that marks the rows of a shape; found by its place, never by a name. */
    RECORD,
    STATUS,
    GOODS(true),
    DELIVERY(true),
    /** What is paid back of the price, on the row of the sale. */
    REFUND(true),
    DISCOUNT(true),
    TAX(true),
    /** Tax on delivery alone, beside the tax on the goods. */
    DELIVERY_TAX(true),
    WITHHELD(true),
    FEE(true),
    ADVERT(true),
    NET(true),
    TOTAL(true),
    AMOUNT(true),
    DEBIT(true),
    CREDIT(true),
    MARK,
    BALANCE(true),
    QUANTITY(true),
    UNIT_PRICE(true),
    PAYOUT(true),
    IGNORED,
    NONE;

    private final Optional<Field> field;
    private final boolean number;

    Role() {
        this(Optional.empty(), false);
    }

    Role(Field field) {
        this(Optional.of(field), false);
    }

    Role(boolean number) {
        this(Optional.empty(), number);
    }

    Role(Optional<Field> field, boolean number) {
        this.field = field;
        this.number = number;
    }

    /** The words of the roles. */
    static List<String> words() {
        return Arrays.stream(values()).map(r -> r.name().toLowerCase(Locale.ROOT)).toList();
    }

    static Role of(String word) {
        return valueOf(word.toUpperCase(Locale.ROOT));
    }

    /** The entry's field it fills, where it is a text or a day. */
    Optional<Field> field() {
        return field;
    }

    /** Whether its cells are numbers. */
    boolean isNumber() {
        return number;
    }

    /** Whether it is a part of what a row comes to, not a sum of parts. */
    boolean isPart() {
        return this == GOODS
                || this == DELIVERY
                || this == REFUND
                || this == DISCOUNT
                || this == TAX
                || this == DELIVERY_TAX
                || this == WITHHELD
                || this == FEE
                || this == ADVERT;
    }
}
