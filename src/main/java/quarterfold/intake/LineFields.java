package quarterfold.intake;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import quarterfold.ledger.Coded;
import quarterfold.ledger.Line;
import quarterfold.ledger.Particular;
import quarterfold.ledger.Profile;
import quarterfold.money.Amount;

/** Everything a line says, by the plain sheet's names, for comparing two of them. */
final class LineFields {

    private LineFields() {}

    /** Every field in the order a person reads them; what is not stated is empty. */
    static Map<String, String> of(Line line) {
        Map<String, String> fields = new LinkedHashMap<>();
        Profile profile = line.profile();
        fields.put("row", Long.toString(line.row()));
        fields.put("date", line.taxPoint().toString());
        fields.put("kind", profile.kind().code());
        fields.put("currency", profile.currency());
        fields.put("net", text(line.amounts().net()));
        fields.put("vat", text(line.amounts().vat()));
        fields.put("gross", text(line.amounts().gross()));
        fields.put("rate", profile.rate().code());
        fields.put("document", line.document());
        fields.put("order", line.order());
        fields.put("product", line.item().product());
        fields.put("description", line.item().description());
        fields.put("party", profile.party());
        fields.put("party_country", profile.partyCountry());
        fields.put("party_vat", profile.partyVat());
        fields.put("category", profile.category());
        fields.put("from", profile.from());
        fields.put("to", profile.to());
        fields.put("customer", profile.customer().code());
        fields.put("customer_vat", profile.customerVat());
        fields.put("channel", profile.channel());
        fields.put("channel_collects", profile.channelCollects().code());
        fields.put("settlement", profile.settlement());
        fields.put("evidence", profile.evidence().code());
        fields.put("business_use", profile.businessUse().toString());
        fields.put("paid", line.paid().map(Object::toString).orElse(""));
        for (Particular particular : Particular.values()) {
            fields.put(code(particular), line.particulars().word(particular).orElse(""));
        }
        fields.put("original", line.original());
        fields.put("notes", line.notes());
        return fields;
    }

    private static String code(Coded coded) {
        return coded.code();
    }

    private static String text(Optional<Amount> amount) {
        return amount.map(Amount::toString).orElse("");
    }
}
