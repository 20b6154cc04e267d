package quarterfold.intake;

import java.nio.file.Path;
import java.time.Month;
import java.time.format.TextStyle;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The name a report has whatever month it is of. */
final class ReportName {
    private static final List<String> LANGUAGES = List.of("en", "de", "fr", "es", "it", "nl", "pl");
    private static final Set<String> MONTHS =
            LANGUAGES.stream()
                    .map(Locale::forLanguageTag)
                    .flatMap(ReportName::months)
                    .flatMap(month -> Phrase.of(month).words().stream())
                    .filter(word -> word.matches("[a-z]{3,}"))
                    .collect(Collectors.toUnmodifiableSet());

    private ReportName() {}

    private static Stream<String> months(Locale language) {
        return Stream.of(Month.values())
                .flatMap(
                        month ->
                                Stream.of(
                                                TextStyle.FULL,
                                                TextStyle.FULL_STANDALONE,
                                                TextStyle.SHORT,
                                                TextStyle.SHORT_STANDALONE)
                                        .map(style -> month.getDisplayName(style, language)));
    }

    /** The file's own name without digits, months and endings, in small letters and hyphens. */
    static String of(Path file) {
        String own = String.valueOf(file.getFileName()).replaceFirst("\\.[^.]*$", "");
        String name =
                Phrase.of(own).words().stream()
                        .map(w -> w.replaceAll("[^a-z]", ""))
                        .filter(w -> !w.isEmpty() && !MONTHS.contains(w))
                        .collect(Collectors.joining("-"));
        return name.isEmpty() ? "my-report" : name;
    }
}
