package quarterfold.papers;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.time.LocalDate;
import java.util.Optional;
import quarterfold.money.Amount;
import quarterfold.outlook.Deadline;
import quarterfold.outlook.Interim;
import quarterfold.outlook.PaymentDates;
import quarterfold.period.Period;

/** A period's deadlines as JSON, a stable shape for programs. */
public final class DeadlinesJson {

    private DeadlinesJson() {}

    /**
     * One line of JSON, without a line end. Amounts are texts, days ISO 8601; what is not known is
     * left out; {@code payments} has the book's own method first.
     */
    public static String of(Deadline deadline) {
        return JsonLine.of(
                json -> {
                    Period period = deadline.period();
                    json.writeObjectFieldStart("period");
                    json.writeStringField("name", period.name().toString());
                    day(json, "start", period.start());
                    day(json, "end", period.end());
                    day(json, "due", period.due());
                    json.writeEndObject();
                    json.writeStringField("status", deadline.status().code());
                    json.writeStringField("owed", deadline.owed().toString());
                    day(json, "last_day", deadline.lastDay());
                    json.writeArrayFieldStart("interims");
                    for (Interim interim : deadline.interims()) {
                        json.writeStartObject();
                        day(json, "due", interim.due());
                        json.writeStringField("amount", interim.amount().toString());
                        json.writeEndObject();
                    }
                    json.writeEndArray();
                    json.writeArrayFieldStart("payments");
                    for (PaymentDates dates : deadline.payments()) {
                        payment(json, dates);
                    }
                    json.writeEndArray();
                    json.writeArrayFieldStart("late");
                    for (Deadline.Late late : deadline.late()) {
                        json.writeStartObject();
                        json.writeNumberField("day", late.number());
                        day(json, "paid_on", late.day());
                        amount(json, "penalty", late.penalty());
                        amount(json, "interest", late.interest());
                        json.writeEndObject();
                    }
                    json.writeEndArray();
                    if (deadline.points().isPresent()) {
                        points(json, deadline.points().get());
                    }
                });
    }

    private static void payment(JsonGenerator json, PaymentDates dates) throws IOException {
        json.writeStartObject();
        json.writeStringField("method", dates.method().code());
        day(json, "act_by", dates.actBy());
        if (dates.otherActBy().isPresent()) {
            day(json, "other_act_by", dates.otherActBy().get());
        }
        day(json, "arrives_by", dates.arrivesBy());
        if (dates.taken().isPresent()) {
            day(json, "taken", dates.taken().get());
        }
        json.writeEndObject();
    }

    private static void points(JsonGenerator json, Deadline.Points points) throws IOException {
        json.writeObjectFieldStart("late_return");
        json.writeStringField("frequency", points.frequency().code());
        json.writeNumberField("points_before", points.before());
        json.writeNumberField("points_after", points.after());
        json.writeNumberField("threshold", points.threshold());
        json.writeStringField("penalty", points.penalty().toString());
        if (points.isAtThreshold()) {
            day(json, "on_time_from", points.clearFrom());
            day(json, "on_time_to", points.clearTo());
        } else {
            day(json, "point_expires", points.expires());
        }
        json.writeEndObject();
    }

    private static void day(JsonGenerator json, String name, LocalDate day) throws IOException {
        json.writeStringField(name, day.toString());
    }

    private static void amount(JsonGenerator json, String name, Optional<Amount> amount)
            throws IOException {
        if (amount.isPresent()) {
            json.writeStringField(name, amount.get().toString());
        }
    }
}
