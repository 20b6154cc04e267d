package quarterfold.ledger;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import quarterfold.money.Percent;

/**
 * A line with a fact stated after it was entered: by a decision, as {@code field=value} in the
 * plain sheet's words. The line in the ledger stays as it is.
 */
public final class StatedFacts {

    private static final String KIND = "kind";

    private static final List<String> OF_THE_PROFILE =
            List.of(
                    KIND,
                    "rate",
                    "party_country",
                    "party_vat",
                    "category",
                    "from",
                    "to",
                    "customer",
                    "customer_vat",
                    "channel_collects",
                    "evidence",
                    "business_use");

    private StatedFacts() {}

    /** Every field that may be stated, for an error that says what was expected. */
    public static List<String> fields() {
        return Stream.concat(
                        OF_THE_PROFILE.stream(), Stream.of(Particular.values()).map(Coded::code))
                .collect(Collectors.toList());
    }

    /** Whether {@code field=value} names a field that may be stated and a value it may have. */
    public static boolean isOne(String fieldAndValue) {
        int at = fieldAndValue.indexOf('=');
        if (at < 0) {
            return false;
        }
        String field = fieldAndValue.substring(0, at);
        String value = fieldAndValue.substring(at + 1);
        Optional<Particular> particular = Coded.find(Particular.class, field);
        return particular.isPresent()
                ? Particulars.isOf(particular.get(), value)
                : OF_THE_PROFILE.contains(field) && profileTakes(field, value);
    }

    /** What a field takes, with an example, for an error that says what was expected. */
    public static String expected(String field) {
        Optional<Particular> particular = Coded.find(Particular.class, field);
        if (particular.isPresent()) {
            return particular.get().type().expected();
        }
        return switch (field) {
            case KIND -> "one of " + Coded.codes(Kind.class) + ", such as fee";
            case "rate" -> "a percentage, exempt, outside, margin or reverse-charge, such as 20";
            case "party_country", "from", "to" ->
                    "an ISO 3166 country code, or XI for Northern Ireland, such as GB";
            case "customer" -> "one of " + Coded.codes(Customer.class) + ", such as consumer";
            case "channel_collects" ->
                    "one of " + Coded.codes(ChannelCollects.class) + ", such as no";
            case "evidence" -> "one of " + Coded.codes(Evidence.class) + ", such as invoice";
            case "business_use" -> "a percentage from 0 to 100, such as 60";
            case "party_vat", "customer_vat" -> "a VAT number, such as GB101747696";
            default -> "a word of blocked.csv, such as stock";
        };
    }

    private static boolean profileTakes(String field, String value) {
        return switch (field) {
            case KIND -> Coded.find(Kind.class, value).isPresent();
            case "rate" -> StatedRate.parse(value).isPresent();
            case "party_country", "from", "to" -> isCountry(value);
            case "customer" -> Coded.find(Customer.class, value).isPresent();
            case "channel_collects" -> Coded.find(ChannelCollects.class, value).isPresent();
            case "evidence" -> Coded.find(Evidence.class, value).isPresent();
            case "business_use" -> Particulars.isOf(Particular.ON_HAND, value);
            default -> !value.isBlank();
        };
    }

    private static boolean isCountry(String text) {
        return text.equals("XI")
                || Locale.getISOCountries(Locale.IsoCountryCode.PART1_ALPHA2).contains(text);
    }

    /**
     * The line with one more fact. Refuses what {@link #isOne} does not take. What kind it is of
     * the ledger tells with the entry itself; see {@link Ledger#kinds}.
     */
    public static Line state(Line line, String fieldAndValue) {
        if (!isOne(fieldAndValue)) {
            throw new IllegalArgumentException("not a fact that may be stated: " + fieldAndValue);
        }
        int at = fieldAndValue.indexOf('=');
        String field = fieldAndValue.substring(0, at);
        String value = fieldAndValue.substring(at + 1);
        if (field.equals(KIND)) {
            return line;
        }
        Optional<Particular> particular = Coded.find(Particular.class, field);
        return particular.isPresent()
                ? with(line, line.particulars().with(particular.get(), value))
                : with(line, with(line.profile(), field, value));
    }

    /** The line with a document seen on a day; evidence of export is obtained on that day. */
    public static Line seen(Line line, String evidence, LocalDate day) {
        Line with = with(line, with(line.profile(), "evidence", evidence));
        return evidence.equals(Evidence.EXPORT.code())
                ? with(with, with.particulars().with(Particular.EVIDENCED, day.toString()))
                : with;
    }

    private static Line with(Line line, Profile profile) {
        return new Line(
                line.row(),
                line.taxPoint(),
                profile,
                line.item(),
                line.document(),
                line.order(),
                line.amounts(),
                line.paid(),
                line.particulars(),
                line.original(),
                line.notes());
    }

    private static Line with(Line line, Particulars particulars) {
        return new Line(
                line.row(),
                line.taxPoint(),
                line.profile(),
                line.item(),
                line.document(),
                line.order(),
                line.amounts(),
                line.paid(),
                particulars,
                line.original(),
                line.notes());
    }

    private static Profile with(Profile p, String field, String value) {
        return new Profile(
                p.kind(),
                p.currency(),
                field.equals("rate") ? StatedRate.parse(value).orElseThrow() : p.rate(),
                p.party(),
                field.equals("party_country") ? value : p.partyCountry(),
                field.equals("party_vat") ? value : p.partyVat(),
                field.equals("category") ? value : p.category(),
                field.equals("from") ? value : p.from(),
                field.equals("to") ? value : p.to(),
                field.equals("customer")
                        ? Coded.find(Customer.class, value).orElseThrow()
                        : p.customer(),
                field.equals("customer_vat") ? value : p.customerVat(),
                p.channel(),
                field.equals("channel_collects")
                        ? Coded.find(ChannelCollects.class, value).orElseThrow()
                        : p.channelCollects(),
                p.settlement(),
                field.equals("evidence")
                        ? Coded.find(Evidence.class, value).orElseThrow()
                        : p.evidence(),
                field.equals("business_use") ? Percent.of(value) : p.businessUse());
    }
}
