package quarterfold.intake;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Holds the page numbers a report prints against the pages that are there. For one thread. */
final class PrintedPages {
    private final Print print;
    private final String file;
    private final Problems problems;
    private final Map<Integer, Map<String, String>> byPage = new HashMap<>();

    PrintedPages(Print print, String file, Problems problems) {
        this.print = print;
        this.file = file;
        this.problems = problems;
    }

    /** Takes a line that numbers its page; false where it does not. */
    boolean take(PrintedLine line) {
        for (LinePattern page : print.page()) {
            Map<String, String> texts = page.match(line.text()).orElse(Map.of());
            if (!texts.isEmpty()) {
                byPage.put(line.page(), texts);
                return true;
            }
        }
        return false;
    }

    /** Tells of each page without the number it should have, and of a last page that is not it. */
    void check(List<PrintedLine> lines) {
        int last = lines.isEmpty() ? 0 : lines.get(lines.size() - 1).page();
        for (LinePattern line : print.page()) {
            for (int page = 1; page <= last; page++) {
                Map<String, String> texts = byPage.getOrDefault(page, Map.of());
                String number = texts.getOrDefault(Print.PAGE, "");
                String of = texts.getOrDefault(Print.PAGES, Integer.toString(last));
                if (!isNumber(number, page) || !isNumber(of, last)) {
                    problems.add(
                            new Problem(
                                    file + ":page " + page,
                                    "",
                                    "found the page number %s; expected the file's pages in order and all there, page %d of %d, as in '%s'; is a page missing?"
                                            .formatted(
                                                    number.isEmpty()
                                                            ? "nowhere"
                                                            : Problem.quoted(number + " of " + of),
                                                    page,
                                                    last,
                                                    line)));
                }
            }
        }
    }

    private static boolean isNumber(String text, int number) {
        return text.replaceFirst("^0+(?=.)", "").equals(Integer.toString(number));
    }
}
