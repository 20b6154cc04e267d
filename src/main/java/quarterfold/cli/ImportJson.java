package quarterfold.cli;

import quarterfold.intake.ImportResult;
import quarterfold.intake.Problem;
import quarterfold.papers.JsonLine;

/** What became of a file, as JSON: a stable shape for programs. */
final class ImportJson {

    private ImportJson() {}

    /** One line of JSON, without a line end. */
    static String of(ImportResult result) {
        return JsonLine.of(
                json -> {
                    json.writeStringField("file", result.name());
                    json.writeStringField("sha256", result.sha256());
                    json.writeStringField("result", word(result));
                    json.writeStringField("kind", result.kind());
                    json.writeStringField("layout", result.layout());
                    json.writeNumberField("rows_read", result.rowsRead());
                    json.writeNumberField("entries", result.entries());
                    json.writeNumberField("set_aside", result.setAside());
                    json.writeNumberField("repeated", repeated(result));
                    if (result instanceof ImportResult.InLedger in) {
                        json.writeStringField("money", in.source().moneyEntered().toString());
                    }
                    if (result instanceof ImportResult.Entered entered) {
                        json.writeNumberField("documents", entered.attached());
                        if (entered.rates() > 0) {
                            json.writeNumberField("rates", entered.rates());
                        }
                    }
                    if (result instanceof ImportResult.NotEntered not) {
                        json.writeStringField("reason", not.reason());
                    }
                    json.writeArrayFieldStart("problems");
                    for (Problem problem : result.problems()) {
                        json.writeString(problem.toString());
                    }
                    json.writeEndArray();
                });
    }

    private static long repeated(ImportResult result) {
        return result instanceof ImportResult.Entered entered ? entered.repeated().rows() : 0;
    }

    private static String word(ImportResult result) {
        if (result instanceof ImportResult.Entered) {
            return "entered";
        }
        if (result instanceof ImportResult.KeptAsEvidence) {
            return "evidence";
        }
        if (result instanceof ImportResult.PassedOver) {
            return "passed-over";
        }
        return result instanceof ImportResult.AlreadyThere ? "already-there" : "refused";
    }
}
