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

    /**
     * Prints it.
     *
     * @param wanted whether the layout was to be written
     * @param beside layouts of the book that the file fits as well
     */
    static void print(
            Learned learned,
            Optional<Path> written,
            boolean wanted,
            List<String> beside,
            PrintWriter out) {
        part("Found", learned.found(), out);
        part("Proved", learned.proofs(), out);
        part("Does not tie", learned.faults(), out);
        part("To know", learned.notes(), out);
        part("Open", learned.open().stream().map(LearnText::open).toList(), out);
        if (written.isPresent()) {
            out.printf(
                    "Written: layouts/%s.yaml. Read it; import reads with it from now on.%n",
                    learned.name());
            if (!beside.isEmpty()) {
                out.printf(
                        "The file fits %s too, and import refuses it until one of them is removed.%n",
                        layouts(beside));
            }
        } else if (wanted && !beside.isEmpty()) {
            out.printf(
                    "Not written: the file fits %s already, and import would not know which is meant. --name %s --accept learns it into that one.%n",
                    layouts(beside), beside.get(0));
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

    private static String layouts(List<String> names) {
        return (names.size() == 1 ? "the layout " : "the layouts ") + String.join(" and ", names);
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
        String text = question.text();
        return "%s%s%s Answer with --answer \"%s=…\"."
                .formatted(
                        text,
                        text.matches(".*[.?!]") ? "" : ".",
                        answers(question.answers()),
                        question.id());
    }

    private static String answers(List<String> answers) {
        List<String> shown =
                answers.stream()
                        .map(a -> a.matches(".*[\\p{L}\\d].*") ? a : "'" + a + "'")
                        .toList();
        return switch (shown.size()) {
            case 0 -> "";
            case 1 -> " The one answer is " + shown.get(0) + ".";
            default -> " One of " + String.join(", ", shown) + ".";
        };
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
