package quarterfold.cli;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import quarterfold.intake.Learned;
import quarterfold.intake.Question;
import quarterfold.papers.JsonLine;

/** What learning a report came to, for people and for programs. */
final class LearnText {

    private static final int TOLD = 40;

    private LearnText() {}

    /** {@code wanted}: whether the layout was to be written. */
    static void print(Learned learned, Optional<Path> written, boolean wanted, PrintWriter out) {
        part("Found", learned.found(), out);
        part("Proved", learned.proofs(), out);
        part("Does not tie", learned.faults(), out);
        part("To know", learned.notes(), out);
        part("Open", learned.open().stream().map(LearnText::open).toList(), out);
        if (written.isPresent()) {
            out.printf(
                    "Written: layouts/%s.yaml. Read it; import reads with it from now on.%n",
                    learned.name());
        } else if (wanted) {
            out.printf(
                    "Not written: layouts/%s.yaml is there and says something else; --accept replaces it, --name gives another.%n",
                    learned.name());
        } else {
            out.printf(
                    "Nothing was written.%s%n",
                    learned.yaml().isPresent() ? " --accept writes the layout as it is." : "");
        }
    }

    private static void part(String title, List<String> lines, PrintWriter out) {
        if (lines.isEmpty()) {
            return;
        }
        out.println(title);
        lines.stream().limit(TOLD).forEach(line -> out.println("  " + Texts.plain(line)));
        if (lines.size() > TOLD) {
            out.println("  and " + Texts.count(lines.size() - TOLD, "more", "more"));
        }
        out.println();
    }

    private static String open(Question question) {
        return "%s%s Answer with --answer \"%s=…\"."
                .formatted(
                        question.text(),
                        question.answers().isEmpty()
                                ? ""
                                : " One of " + String.join(", ", question.answers()) + ".",
                        question.id());
    }

    /** One JSON object on a line. */
    static String json(Path file, Learned learned, Optional<Path> written) {
        return JsonLine.of(
                json -> {
                    json.writeStringField("file", String.valueOf(file.getFileName()));
                    json.writeStringField("layout", learned.name());
                    json.writeStringField("result", result(learned));
                    json.writeBooleanField("written", written.isPresent());
                    json.writeNumberField("rows", learned.rows());
                    json.writeNumberField("entries", learned.entries());
                    texts(json, "found", learned.found());
                    texts(json, "proofs", learned.proofs());
                    texts(json, "faults", learned.faults());
                    texts(json, "notes", learned.notes());
                    json.writeArrayFieldStart("open");
                    for (Question question : learned.open()) {
                        json.writeStartObject();
                        json.writeStringField("id", question.id());
                        json.writeStringField("question", question.text());
                        texts(json, "answers", question.answers());
                        json.writeEndObject();
                    }
                    json.writeEndArray();
                });
    }

    private static void texts(JsonGenerator json, String name, List<String> texts)
            throws IOException {
        json.writeArrayFieldStart(name);
        for (String text : texts) {
            json.writeString(text);
        }
        json.writeEndArray();
    }

    private static String result(Learned learned) {
        if (learned.isProved()) {
            return "proved";
        }
        if (learned.yaml().isEmpty() && learned.open().isEmpty()) {
            return "none";
        }
        return learned.open().isEmpty() ? "does-not-tie" : "open";
    }
}
