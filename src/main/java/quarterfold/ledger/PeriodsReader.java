package quarterfold.ledger;

import java.time.LocalDate;
import java.time.Month;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.SequenceNode;
import quarterfold.ledger.AnnualAccounting.Instalments;
import quarterfold.money.Amount;
import quarterfold.money.Percent;

/** Reads what settings say of the registration and its return periods. */
final class PeriodsReader {

    static final List<String> NAMES =
            List.of(
                    "registered_from",
                    "registered_to",
                    "period_ends",
                    "periods",
                    "annual_accounting",
                    "payments_on_account",
                    "partial_exemption_year_ends",
                    "partial_exemption_last_year");

    private static final String AMOUNT = "an amount above nothing, such as 8000.00";
    private static final String NOTIFIED =
            "the periods the tax authority notified, such as [{from: 2026-02-15, to: 2026-06-30, due: 2026-08-07}]";

    private final YamlFile yaml;
    private final YamlSettings settings;

    PeriodsReader(YamlFile yaml, YamlSettings settings) {
        this.yaml = yaml;
        this.settings = settings;
    }

    /** Nothing, and its problems, where a required setting is missing or refused. */
    Optional<Periods> read() {
        Optional<LocalDate> from = settings.day("registered_from");
        Optional<LocalDate> to = settings.optionalDay("registered_to");
        Optional<List<Month>> ends = ends();
        List<NotifiedPeriod> notified = notified();
        Optional<AnnualAccounting> annual =
                block(
                        "annual_accounting",
                        List.of("from", "instalments", "last_year_vat"),
                        "such as {from: 2026-04-01, instalments: monthly, last_year_vat: 8000.00}",
                        PeriodsReader::annual);
        Optional<PaymentsOnAccount> onAccount =
                block(
                        "payments_on_account",
                        List.of("from", "yearly_vat"),
                        "such as {from: 2026-04-01, yearly_vat: 2400000.00}",
                        PeriodsReader::onAccount);
        Optional<Month> yearEnds =
                settings.optional(
                        "partial_exemption_year_ends",
                        "a month from 1 to 12, such as 3",
                        PeriodsReader::month);
        Optional<Percent> lastYear =
                settings.optional(
                        "partial_exemption_last_year",
                        "a percentage from 0 to 100, such as 43",
                        PeriodsReader::share);
        if (from.isEmpty() || ends.isEmpty()) {
            return Optional.empty();
        }
        checkSpan(from.get(), to, notified);
        annual.filter(a -> a.from().isBefore(from.get()))
                .ifPresent(a -> beforeRegistration("annual_accounting", a.from(), from.get()));
        onAccount
                .filter(a -> a.from().isBefore(from.get()))
                .ifPresent(a -> beforeRegistration("payments_on_account", a.from(), from.get()));
        return Optional.of(
                new Periods(
                        from.get(),
                        to,
                        ends.get(),
                        notified,
                        annual,
                        onAccount,
                        yearEnds,
                        lastYear));
    }

    private void beforeRegistration(String key, LocalDate found, LocalDate from) {
        settings.problem(
                key,
                "found %s, before the registration; expected %s or later".formatted(found, from));
    }

    private void checkSpan(LocalDate from, Optional<LocalDate> to, List<NotifiedPeriod> notified) {
        if (to.filter(last -> last.isBefore(from)).isPresent()) {
            settings.problem(
                    "registered_to",
                    "found %s, before the registration; expected %s or later"
                            .formatted(to.get(), from));
        }
        for (NotifiedPeriod period : notified) {
            if (period.from().isBefore(from)) {
                beforeRegistration("periods", period.from(), from);
            }
            if (to.filter(last -> period.to().isAfter(last)).isPresent()) {
                settings.problem(
                        "periods",
                        "found %s, after the registration; expected %s or earlier"
                                .formatted(period.to(), to.get()));
            }
        }
    }

    private Optional<List<Month>> ends() {
        Optional<Node> node = settings.node("period_ends");
        List<Month> months = new ArrayList<>();
        if (node.isPresent() && node.get() instanceof SequenceNode list) {
            for (Node month : list.getValue()) {
                YamlFile.text(month)
                        .flatMap(PeriodsReader::month)
                        .filter(m -> months.isEmpty() || m.compareTo(last(months)) > 0)
                        .ifPresent(months::add);
            }
            if (!months.isEmpty() && months.size() == list.getValue().size()) {
                return Optional.of(months);
            }
        }
        yaml.unexpected(
                node.orElse(null),
                "period_ends",
                "months from 1 to 12, rising, such as [3, 6, 9, 12]");
        return Optional.empty();
    }

    private static <T> T last(List<T> all) {
        return all.get(all.size() - 1);
    }

    private static Optional<Percent> share(String text) {
        return YamlSettings.of(Percent::of, text).filter(p -> p.compareTo(Percent.HUNDRED) <= 0);
    }

    private static Optional<Month> month(String text) {
        return YamlSettings.of(n -> Month.of(Integer.parseInt(n)), text);
    }

    private List<NotifiedPeriod> notified() {
        List<NotifiedPeriod> periods = new ArrayList<>();
        Optional<Node> node = settings.node("periods");
        if (node.isEmpty()) {
            return periods;
        }
        if (!(node.get() instanceof SequenceNode list)) {
            yaml.unexpected(node.get(), "periods", NOTIFIED);
            return periods;
        }
        for (Node each : list.getValue()) {
            if (each instanceof MappingNode map) {
                YamlSettings period =
                        new YamlSettings(yaml, "periods.", map, List.of("from", "to", "due"));
                Optional<LocalDate> from = period.day("from");
                Optional<LocalDate> to = period.day("to");
                Optional<LocalDate> due = period.optionalDay("due");
                if (from.isPresent() && to.isPresent()) {
                    NotifiedPeriod read = new NotifiedPeriod(from.get(), to.get(), due);
                    check(period, read, periods);
                    periods.add(read);
                }
            } else {
                yaml.unexpected(each, "periods", NOTIFIED);
            }
        }
        return periods;
    }

    private static void check(
            YamlSettings settings, NotifiedPeriod period, List<NotifiedPeriod> before) {
        LocalDate to = period.to();
        if (to.isBefore(period.from())) {
            settings.problem("to", "found %s, before its from; expected a later day".formatted(to));
        }
        if (period.due().isEmpty() && !to.equals(YearMonth.from(to).atEndOfMonth())) {
            settings.problem(
                    "due",
                    "found nothing for a period that ends within a month; expected the due day the tax authority notified, since no rule gives it");
        }
        if (period.due().filter(due -> !due.isAfter(to)).isPresent()) {
            settings.problem(
                    "due",
                    "found %s, not after the period; expected the day the return is due"
                            .formatted(period.due().get()));
        }
        if (!before.isEmpty() && !period.from().isAfter(last(before).to())) {
            settings.problem(
                    "from",
                    "found %s, not after the period before it; expected periods in order, none over another"
                            .formatted(period.from()));
        }
        if (before.stream().anyMatch(p -> YearMonth.from(p.to()).equals(YearMonth.from(to)))) {
            settings.problem(
                    "to",
                    "found a second period that ends in %s; expected one, since a period is named by the month of its last day"
                            .formatted(YearMonth.from(to)));
        }
    }

    private <T> Optional<T> block(
            String key,
            List<String> names,
            String example,
            Function<YamlSettings, Optional<T>> read) {
        Optional<Node> node = settings.node(key);
        if (node.isPresent() && node.get() instanceof MappingNode map) {
            return read.apply(new YamlSettings(yaml, key + ".", map, names));
        }
        node.ifPresent(n -> yaml.unexpected(n, key, String.join(", ", names) + ", " + example));
        return Optional.empty();
    }

    private static Optional<AnnualAccounting> annual(YamlSettings block) {
        Optional<LocalDate> from = block.day("from");
        Optional<Instalments> instalments =
                block.required(
                        "instalments",
                        "monthly or quarterly",
                        t ->
                                Arrays.stream(Instalments.values())
                                        .filter(i -> i.code().equals(t))
                                        .findFirst());
        Optional<Amount> vat = block.required("last_year_vat", AMOUNT, PeriodsReader::amount);
        return from.flatMap(
                f -> instalments.flatMap(i -> vat.map(v -> new AnnualAccounting(f, i, v))));
    }

    private static Optional<PaymentsOnAccount> onAccount(YamlSettings block) {
        Optional<LocalDate> from = block.day("from");
        Optional<Amount> vat = block.required("yearly_vat", AMOUNT, PeriodsReader::amount);
        return from.flatMap(f -> vat.map(v -> new PaymentsOnAccount(f, v)));
    }

    private static Optional<Amount> amount(String text) {
        return YamlSettings.of(Amount::of, text).filter(a -> a.signum() > 0);
    }
}
