package quarterfold.ledger;

import java.time.LocalDate;
import java.time.Month;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import quarterfold.money.Percent;

/** Each setting as the YAML text of its value; an empty text where it is not stated. */
record SettingsText(Settings settings) {

    Map<String, String> values() {
        Periods periods = settings.periods();
        return Map.ofEntries(
                Map.entry("name", SettingsFile.quoted(settings.name())),
                Map.entry("country", SettingsFile.quoted(settings.country())),
                Map.entry("vat_number", SettingsFile.quoted(settings.vatNumber())),
                Map.entry("registered_from", periods.registeredFrom().toString()),
                Map.entry("registered_to", text(periods.registeredTo(), LocalDate::toString)),
                Map.entry("period_ends", months(periods.ends())),
                Map.entry("periods", notified(periods.notified())),
                Map.entry("annual_accounting", text(periods.annual(), SettingsText::annual)),
                Map.entry(
                        "payments_on_account", text(periods.onAccount(), SettingsText::onAccount)),
                Map.entry(
                        "partial_exemption_year_ends",
                        text(
                                periods.partialExemptionYearEnds(),
                                m -> String.valueOf(m.getValue()))),
                Map.entry(
                        "partial_exemption_last_year",
                        text(periods.partialExemptionLastYear(), Percent::toString)),
                Map.entry("scheme", schemes(settings.schemes())),
                Map.entry(
                        "flat_rate_sector", text(settings.flatRateSector(), SettingsFile::quoted)),
                Map.entry("zone", SettingsFile.quoted(settings.zone().getId())),
                Map.entry("currency", SettingsFile.quoted(settings.currency())),
                Map.entry("rounding", settings.roundingPerLine() ? "per-line" : "per-box"),
                Map.entry("northern_ireland", settings.northernIreland() ? "yes" : "no"),
                Map.entry("stock", SettingsFile.quoted(settings.stock())),
                Map.entry("pays_by", settings.paysBy().code()),
                Map.entry("choices", choices(settings.choices())));
    }

    private static <T> String text(Optional<T> value, Function<T, String> words) {
        return value.map(words).orElse("");
    }

    private static String months(List<Month> ends) {
        return ends.stream()
                .map(Month::getValue)
                .map(String::valueOf)
                .collect(Collectors.joining(", ", "[", "]"));
    }

    private static String notified(List<NotifiedPeriod> periods) {
        return periods.isEmpty()
                ? ""
                : periods.stream()
                        .map(
                                p ->
                                        "{from: %s, to: %s%s}"
                                                .formatted(
                                                        p.from(),
                                                        p.to(),
                                                        text(p.due(), d -> ", due: " + d)))
                        .collect(Collectors.joining("\n  - ", "\n  - ", ""));
    }

    private static String annual(AnnualAccounting annual) {
        return "{from: %s, instalments: %s, last_year_vat: %s}"
                .formatted(annual.from(), annual.instalments().code(), annual.lastYearVat());
    }

    private static String onAccount(PaymentsOnAccount onAccount) {
        return "{from: %s, yearly_vat: %s}".formatted(onAccount.from(), onAccount.yearlyVat());
    }

    private static String schemes(Schemes schemes) {
        return schemes.from().firstKey().equals(LocalDate.MIN)
                ? SettingsFile.quoted(schemes.from().firstEntry().getValue())
                : schemes.from().entrySet().stream()
                        .map(s -> s.getKey() + ": " + SettingsFile.quoted(s.getValue()))
                        .collect(Collectors.joining("\n  ", "\n  ", ""));
    }

    private static String choices(Map<String, String> choices) {
        return choices.isEmpty()
                ? "{}"
                : new TreeMap<>(choices)
                        .entrySet().stream()
                                .map(
                                        c ->
                                                SettingsFile.quoted(c.getKey())
                                                        + ": "
                                                        + SettingsFile.quoted(c.getValue()))
                                .collect(Collectors.joining("\n  ", "\n  ", ""));
    }
}
