package quarterfold.outlook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.Month;
import java.time.YearMonth;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import quarterfold.law.Box;
import quarterfold.law.Law;
import quarterfold.ledger.AnnualAccounting;
import quarterfold.ledger.AnnualAccounting.Instalments;
import quarterfold.ledger.PaymentMethod;
import quarterfold.ledger.PaymentsOnAccount;
import quarterfold.ledger.Periods;
import quarterfold.ledger.SampleSettings;
import quarterfold.ledger.Settings;
import quarterfold.money.Amount;
import quarterfold.period.BoxFigure;
import quarterfold.period.Calendar;
import quarterfold.period.Direction;
import quarterfold.period.Period;
import quarterfold.period.VatReturn;

/** Every row of {@code fixtures/published/deadlines.csv}: days and costs with their source. */
class PublishedDeadlinesTest {

    private static final Law LAW = Law.of("GB");
    private static final WorkingDays DAYS = new WorkingDays();

    /** One row. */
    record Example(String id, String rule, String facts, String expected, String source) {
        String fact(int number) {
            return Arrays.asList(facts.split(" ", -1)).get(number);
        }

        LocalDate day(int number) {
            return LocalDate.parse(fact(number));
        }

        Amount amount(int number) {
            return Amount.of(fact(number));
        }

        @Override
        public String toString() {
            return "%s %s of %s".formatted(id, rule, facts);
        }
    }

    static Stream<Example> examples() throws IOException {
        CSVFormat format = CSVFormat.DEFAULT.builder().setHeader().setSkipHeaderRecord(true).get();
        try (CSVParser rows =
                CSVParser.parse(
                        Path.of("fixtures/published/deadlines.csv"),
                        StandardCharsets.UTF_8,
                        format)) {
            return rows.getRecords().stream()
                    .map(
                            r ->
                                    new Example(
                                            r.get("id"),
                                            r.get("rule"),
                                            r.get("facts"),
                                            r.get("expected"),
                                            r.get("source")));
        }
    }

    @Test
    void everyExampleIsThere() throws IOException {
        assertThat(examples().map(Example::id).distinct())
                .containsExactlyInAnyOrder(
                        "T-701", "T-702", "T-703", "T-704", "T-705", "T-706", "T-707", "T-708",
                        "T-709", "T-710", "T-711", "T-712", "T-713", "T-714", "T-715", "T-716",
                        "T-717", "T-718", "6-C");
        assertThat(examples()).allSatisfy(e -> assertThat(e.source()).isNotBlank());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("examples")
    void holds(Example example) {
        assertThat(found(example)).as(example.source()).isEqualTo(example.expected());
    }

    private static String found(Example e) {
        return switch (e.rule()) {
            case "return-due" -> period(e.day(0), 3).due().toString();
            case "return-due-monthly" -> period(e.day(0), 1).due().toString();
            case "direct-debit-set-up" -> by(e, PaymentMethod.DIRECT_DEBIT).actBy().toString();
            case "direct-debit-other-set-up" ->
                    by(e, PaymentMethod.DIRECT_DEBIT).otherActBy().orElseThrow().toString();
            case "direct-debit-taken" ->
                    by(e, PaymentMethod.DIRECT_DEBIT).taken().orElseThrow().toString();
            case "payments-on-account" ->
                    onAccount(e.day(0), "2400000").interims().stream()
                            .map(i -> i.due().toString())
                            .collect(Collectors.joining(" "));
            case "balance-due" ->
                    onAccount(e.day(0), "2400000").payments().get(0).arrivesBy().toString();
            case "payment-on-account" ->
                    onAccount(LocalDate.of(2016, 6, 30), e.fact(0))
                            .interims()
                            .get(0)
                            .amount()
                            .toString();
            case "point-expires" -> points().expiry(e.day(0)).toString();
            case "compliance-begins" -> points().complianceBegins(e.day(0)).toString();
            case "late-return" -> {
                LatePoints.After after =
                        points().late(Integer.parseInt(e.fact(1)), frequency(e.fact(0)));
                yield after.points() + " " + after.penalty();
            }
            case "carried-points" ->
                    String.valueOf(
                            points().carried(
                                            Integer.parseInt(e.fact(2)),
                                            frequency(e.fact(0)),
                                            frequency(e.fact(1))));
            case "penalty" -> penalty(e, new TreeMap<>(), Integer.parseInt(e.fact(2)));
            case "penalty-in-parts" -> {
                TreeMap<LocalDate, Amount> paid = new TreeMap<>();
                paid.put(due(e).plusDays(16), e.amount(1).minus(e.amount(2)));
                paid.put(due(e).plusDays(31), e.amount(2));
                yield penalty(e, paid, 30, "8000");
            }
            case "interest" ->
                    LatePayment.whole(LAW, LocalDate.of(2025, 1, 1), e.day(0), e.amount(1))
                            .interest(e.day(0).plusDays(Long.parseLong(e.fact(2))))
                            .orElseThrow()
                            .toString();
            case "instalment" -> {
                List<Interim> interims = annual(e, "0").interims();
                yield interims.size() + " " + interims.get(0).amount();
            }
            case "balance" -> annual(e, e.fact(2)).owed().toString();
            default -> payment(e);
        };
    }

    private static String payment(Example e) {
        for (PaymentMethod method : PaymentMethod.values()) {
            if (e.rule().equals("pay-by-" + method.code())) {
                return by(e, method).arrivesBy().toString();
            }
            if (e.rule().equals("send-by-" + method.code())) {
                return by(e, method).actBy().toString();
            }
        }
        throw new AssertionError("no rule " + e.rule());
    }

    private static Period period(LocalDate end, int months) {
        List<Month> ends =
                Stream.of(Month.values())
                        .filter(m -> (m.getValue() - end.getMonthValue()) % months == 0)
                        .toList();
        return new Calendar(SampleSettings.on(Periods.of(LocalDate.of(2003, 1, 1), ends)), LAW)
                .named(YearMonth.from(end))
                .orElseThrow();
    }

    private static PaymentDates by(Example e, PaymentMethod method) {
        return new Payments(LAW, DAYS)
                .by(period(e.day(0), 3).due(), true).stream()
                        .filter(p -> p.method() == method)
                        .findFirst()
                        .orElseThrow();
    }

    private static LatePoints points() {
        return new LatePoints(LAW, LocalDate.of(2024, 1, 1));
    }

    private static Frequency frequency(String word) {
        return Frequency.valueOf(word.toUpperCase(Locale.ROOT));
    }

    /** A due day, by which the penalties do not go. */
    private static LocalDate due(Example e) {
        return e.day(0).plusMonths(4);
    }

    private static String penalty(Example e, NavigableMap<LocalDate, Amount> paid, int lateDay) {
        return new LatePayment(LAW, e.day(0), due(e), e.amount(1), paid)
                .penalty(due(e).plusDays(lateDay))
                .orElseThrow()
                .toString();
    }

    /** 7,000 of 15,000 is paid on day 16 and the rest on day 31; the daily penalty is apart. */
    private static String penalty(
            Example e, NavigableMap<LocalDate, Amount> paid, int lastDay, String left) {
        LatePayment payment = new LatePayment(LAW, e.day(0), due(e), e.amount(1), paid);
        Amount all = payment.penalty(due(e).plusDays(lastDay + 1L)).orElseThrow();
        BigDecimal oneDay = new BigDecimal(left).multiply(new BigDecimal("0.1"));
        Amount daily =
                Amount.of(oneDay.divide(new BigDecimal(365), 2, java.math.RoundingMode.HALF_UP));
        return all.minus(daily).toString();
    }

    private static Deadline onAccount(LocalDate end, String yearly) {
        Periods periods =
                new Periods(
                        LocalDate.of(2003, 1, 1),
                        Optional.empty(),
                        SampleSettings.months("3 6 9 12"),
                        List.of(),
                        Optional.empty(),
                        Optional.of(
                                new PaymentsOnAccount(LocalDate.of(2016, 4, 1), Amount.of(yearly))),
                        Optional.empty());
        return deadline(periods, end, "0");
    }

    private static Deadline annual(Example e, String vat) {
        Periods periods =
                new Periods(
                        LocalDate.of(2003, 1, 1),
                        Optional.empty(),
                        SampleSettings.months("3"),
                        List.of(),
                        Optional.of(
                                new AnnualAccounting(
                                        LocalDate.of(2025, 4, 1),
                                        Instalments.valueOf(e.fact(0).toUpperCase(Locale.ROOT)),
                                        e.amount(1))),
                        Optional.empty(),
                        Optional.empty());
        return deadline(periods, LocalDate.of(2026, 3, 31), vat);
    }

    private static Deadline deadline(Periods periods, LocalDate end, String vat) {
        Settings settings = SampleSettings.on(periods);
        Calendar calendar = new Calendar(settings, LAW);
        return new Deadlines(settings, calendar, LAW)
                .of(
                        payable(calendar.named(YearMonth.from(end)).orElseThrow(), vat),
                        0,
                        Optional.empty());
    }

    static VatReturn payable(Period period, String vat) {
        Amount figure = Amount.of(vat);
        List<BoxFigure> boxes =
                LAW.form(period.end()).stream()
                        .filter(b -> b.formula().operation() == Box.Operation.GAP)
                        .map(b -> new BoxFigure(b, figure, figure))
                        .toList();
        return new VatReturn(
                period,
                VatReturn.Status.DRAFT,
                boxes,
                figure.isZero() ? Direction.NIL : Direction.PAY,
                List.of(),
                List.of());
    }
}
