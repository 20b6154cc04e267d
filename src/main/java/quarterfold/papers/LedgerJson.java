package quarterfold.papers;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import quarterfold.ledger.Attachment;
import quarterfold.ledger.Entry;
import quarterfold.ledger.HeldRate;
import quarterfold.ledger.Line;
import quarterfold.ledger.Particular;
import quarterfold.ledger.Profile;
import quarterfold.ledger.Source;
import quarterfold.money.Amount;
import quarterfold.treatment.Conversion;
import quarterfold.treatment.Treated;

/**
 * Entries as JSON Lines, a stable shape for programs. Texts that were not stated are left out;
 * amounts are texts of plain digits; net and VAT are as treated, gross is the money as entered.
 */
public final class LedgerJson {

    private final Map<Long, Source> sources;
    private final List<Attachment> attachments;

    public LedgerJson(List<Source> sources, List<Attachment> attachments) {
        this.attachments = attachments;
        this.sources = sources.stream().collect(Collectors.toMap(Source::id, Function.identity()));
    }

    /** One line of JSON, without a line end. */
    public String of(Treated treated) {
        return JsonLine.of(json -> fields(json, treated));
    }

    private void fields(JsonGenerator json, Treated treated) throws IOException {
        Entry entry = treated.entry();
        Line line = entry.line();
        Profile profile = entry.profile();
        json.writeNumberField("number", entry.number());
        json.writeStringField("kind", profile.kind().code());
        json.writeStringField("date", line.taxPoint().toString());
        json.writeStringField("document", line.document());
        json.writeStringField("party", profile.party());
        stated(json, "party_country", profile.partyCountry());
        stated(json, "party_vat", profile.partyVat());
        stated(json, "statement_month", particular(line, Particular.STATEMENT_MONTH));
        stated(json, "amended", particular(line, Particular.AMENDED));
        stated(json, "advance", particular(line, Particular.ADVANCE));
        stated(json, "prepaid", particular(line, Particular.PREPAID));
        stated(json, "follows", particular(line, Particular.FOLLOWS));
        stated(json, "channel", profile.channel());
        stated(json, "settlement", profile.settlement());
        stated(json, "order", line.order());
        stated(json, "account", line.particulars().word(Particular.ACCOUNT).orElse(""));
        stated(json, "product", line.item().product());
        stated(json, "description", line.item().description());
        stated(json, "category", profile.category());
        stated(json, "from", profile.from());
        stated(json, "to", profile.to());
        json.writeStringField("evidence", profile.evidence().code());
        json.writeStringField("currency", profile.currency());
        json.writeStringField("net", treated.net().toString());
        json.writeStringField("vat", treated.vat().toString());
        json.writeStringField("gross", line.amounts().money().toString());
        json.writeStringField("claim", treated.claim().toString());
        stated(json, "rate", treated.rate());
        json.writeStringField("treatment", treated.treatment());
        json.writeStringField("rule", treated.rule());
        json.writeObjectFieldStart("boxes");
        for (String box : treated.boxes().keySet().stream().sorted().toList()) {
            json.writeStringField(box, treated.boxes().getOrDefault(box, Amount.ZERO).toString());
        }
        json.writeEndObject();
        stated(json, "original", line.original());
        stated(json, "notes", line.notes());
        exchange(json, treated);
        source(json, entry);
        documents(json, entry);
    }

    /** The documents kept with the entry, where there are any. */
    private void documents(JsonGenerator json, Entry entry) throws IOException {
        List<Attachment> of = attachments.stream().filter(a -> a.isOf(entry)).toList();
        if (!of.isEmpty()) {
            json.writeArrayFieldStart("documents");
            for (Attachment document : of) {
                json.writeStartObject();
                json.writeStringField("file", document.file());
                json.writeStringField("sha256", document.sha256());
                json.writeEndObject();
            }
            json.writeEndArray();
        }
    }

    private void exchange(JsonGenerator json, Treated treated) throws IOException {
        if (treated.conversion().isEmpty()) {
            return;
        }
        Conversion conversion = treated.conversion().get();
        json.writeObjectFieldStart("exchange");
        json.writeStringField("money", conversion.money().toString());
        json.writeArrayFieldStart("rates");
        for (HeldRate held : conversion.held()) {
            json.writeStartObject();
            RatesJson.fields(json, held, name(held.source()));
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private String name(long source) {
        return Optional.ofNullable(sources.get(source)).map(Source::name).orElse("");
    }

    private static String particular(Line line, Particular particular) {
        return line.particulars().word(particular).orElse("");
    }

    private void source(JsonGenerator json, Entry entry) throws IOException {
        Source source = sources.get(entry.source());
        if (source == null) {
            throw new IllegalStateException("entry %d names no source".formatted(entry.number()));
        }
        json.writeObjectFieldStart("source");
        json.writeStringField("file", source.name());
        json.writeStringField("sha256", source.sha256());
        json.writeNumberField("row", entry.line().row());
        json.writeEndObject();
    }

    private static void stated(JsonGenerator json, String field, String text) throws IOException {
        if (!text.isEmpty()) {
            json.writeStringField(field, text);
        }
    }
}
