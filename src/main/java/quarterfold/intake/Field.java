package quarterfold.intake;

import java.util.Optional;
import quarterfold.ledger.ChannelCollects;
import quarterfold.ledger.Coded;
import quarterfold.ledger.Customer;
import quarterfold.ledger.Evidence;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Particular;
import quarterfold.ledger.Particulars;

/** A field of an entry that a file may fill: the columns of the plain sheet, by their names. */
enum Field implements Coded {
    DATE("date"),
    KIND("kind", oneOf(Kind.class, "sale")),
    DOCUMENT("document"),
    PARTY("party"),
    PARTY_COUNTRY("party_country", Words.COUNTRY),
    PARTY_VAT("party_vat"),
    DESCRIPTION("description"),
    PRODUCT("product"),
    CATEGORY("category"),
    CURRENCY("currency", "a currency code of ISO 4217, such as GBP"),
    NET("net"),
    VAT("vat"),
    GROSS("gross"),
    RATE("rate", "a percentage, exempt, outside, margin or reverse-charge, such as 20"),
    FROM("from", Words.COUNTRY),
    TO("to", Words.COUNTRY),
    CUSTOMER("customer", oneOf(Customer.class, "consumer")),
    CUSTOMER_VAT("customer_vat"),
    CHANNEL("channel"),
    CHANNEL_COLLECTS("channel_collects", oneOf(ChannelCollects.class, "yes")),
    SETTLEMENT("settlement"),
    ORDER("order"),
    /** The name of the file that is the document; no field of an entry, but kept with it. */
    FILE("file"),
    EVIDENCE("evidence", oneOf(Evidence.class, "invoice")),
    PAID("paid"),
    BUSINESS_USE("business_use", "a percentage from 0 to 100, such as 60"),
    SENT(Particular.SENT),
    INVOICED(Particular.INVOICED),
    HELD(Particular.HELD),
    DUE(Particular.DUE),
    EVIDENCED(Particular.EVIDENCED),
    ADOPTED(Particular.ADOPTED),
    APPROVAL(Particular.APPROVAL),
    COST(Particular.COST),
    CONSIGNMENT(Particular.CONSIGNMENT),
    STERLING_VAT(Particular.STERLING_VAT),
    EXCHANGE_DAY(Particular.EXCHANGE_DAY),
    ON_HAND(Particular.ON_HAND),
    USE(Particular.USE),
    ADDRESSED(Particular.ADDRESSED),
    CO2(Particular.CO2),
    ERROR(Particular.ERROR),
    ACCOUNT(Particular.ACCOUNT),
    STATEMENT_MONTH(Particular.STATEMENT_MONTH),
    AMENDED(Particular.AMENDED),
    ADVANCE(Particular.ADVANCE),
    PREPAID(Particular.PREPAID),
    FOLLOWS(Particular.FOLLOWS);

    private final String code;
    private final String expected;
    private final Optional<Particular> particular;

    Field(Particular particular) {
        this.code = particular.code();
        this.expected = particular.type().expected();
        this.particular = Optional.of(particular);
    }

    Field(String code) {
        this(code, "a text");
    }

    Field(String code, String expected) {
        this.code = code;
        this.expected = expected;
        this.particular = Optional.empty();
    }

    private static <E extends Enum<E> & Coded> String oneOf(Class<E> type, String example) {
        return "one of " + Coded.codes(type) + ", such as " + example;
    }

    @Override
    public String code() {
        return code;
    }

    /** Whether a text that is not empty is of the field's vocabulary. */
    boolean accepts(String text) {
        return switch (this) {
            case KIND -> Coded.find(Kind.class, text).isPresent();
            case PARTY_COUNTRY, FROM, TO -> Words.isCountry(text);
            case CURRENCY -> Words.isCurrency(text);
            case RATE -> Words.isRate(text);
            case CUSTOMER -> Coded.find(Customer.class, text).isPresent();
            case CHANNEL_COLLECTS -> Coded.find(ChannelCollects.class, text).isPresent();
            case EVIDENCE -> Coded.find(Evidence.class, text).isPresent();
            case BUSINESS_USE -> Words.isShare(text);
            default -> particular.filter(p -> !Particulars.isOf(p, text)).isEmpty();
        };
    }

    /** The particular the field fills, where it is one. */
    Optional<Particular> particular() {
        return particular;
    }

    /** What a text of the field must be, with an example. */
    String expected() {
        return expected;
    }

    boolean isAmount() {
        return this == NET || this == VAT || this == GROSS;
    }

    boolean isDate() {
        return this == DATE
                || this == PAID
                || particular.filter(p -> p.type() == Particular.Type.DAY).isPresent();
    }

    /** Whether a layout may take it from a column or a constant: all but the kind and amounts. */
    boolean isGiven() {
        return this != KIND && !isAmount();
    }
}
