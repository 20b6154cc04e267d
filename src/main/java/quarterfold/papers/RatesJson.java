package quarterfold.papers;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import quarterfold.ledger.HeldRate;
import quarterfold.ledger.PublishedRate;

/** Exchange rates as JSON, a stable shape for programs: units are for one of the base currency. */
public final class RatesJson {

    private RatesJson() {}

    /**
     * One line of JSON, without a line end.
     *
     * @param file the name of the rate's file
     */
    public static String of(HeldRate held, String file) {
        return JsonLine.of(json -> fields(json, held, file));
    }

    static void fields(JsonGenerator json, HeldRate held, String file) throws IOException {
        PublishedRate rate = held.rate();
        json.writeStringField("publisher", rate.publisher().code());
        json.writeStringField("currency", rate.currency());
        json.writeStringField("from", rate.first().toString());
        json.writeStringField("to", rate.last().toString());
        json.writeStringField("units", rate.units().toPlainString());
        json.writeStringField("base", rate.publisher().base());
        json.writeStringField("file", file);
        json.writeNumberField("row", rate.row());
    }
}
