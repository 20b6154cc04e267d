package quarterfold.period;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import quarterfold.law.Dated;
import quarterfold.law.FlatRate;
import quarterfold.money.Amount;
import quarterfold.money.Percent;
import quarterfold.treatment.Query;
import quarterfold.treatment.Treated;

/**
 * The VAT of a period under the flat-rate scheme: the sector's percentage, or that of limited-cost
 * traders, on the turnover with VAT; a point lower until the day before the first anniversary of
 * the registration (VAT Regulations 1995 Part VIIA and reg 55JB). A period in which the percentage
 * changes has a sum for each part.
 */
final class FlatRateVat implements Adjuster {

    static final String TURNOVER = "flat-rate-turnover";
    private static final String GOODS = "relevant-goods";

    private final Basis basis;
    private final NavigableMap<LocalDate, Part> parts = new TreeMap<>();
    private boolean seen;

    /** Days between two changes, and what was sold and bought in them. */
    private static final class Part {
        private final LocalDate first;
        private final LocalDate last;
        private Amount turnover = Amount.ZERO;
        private Amount goods = Amount.ZERO;

        Part(LocalDate first, LocalDate last) {
            this.first = first;
            this.last = last;
        }
    }

    /** A percentage and how it came about. */
    private record Rate(Percent percent, String words) {}

    FlatRateVat(Basis basis) {
        this.basis = basis;
        LocalDate start = basis.period().start();
        LocalDate end = basis.period().end();
        List<LocalDate> firsts = new ArrayList<>(List.of(start));
        firsts.addAll(basis.law().changes().subSet(start, false, end, true));
        Optional.of(anniversary()).filter(d -> basis.period().contains(d)).ifPresent(firsts::add);
        List<LocalDate> days = firsts.stream().distinct().sorted().toList();
        for (int i = 0; i < days.size(); i++) {
            LocalDate last = i + 1 < days.size() ? days.get(i + 1).minusDays(1) : end;
            parts.put(days.get(i), new Part(days.get(i), last));
        }
    }

    private LocalDate anniversary() {
        return basis.settings().registeredFrom().plusYears(1);
    }

    @Override
    public void see(Treated treated) {
        Amount turnover = treated.boxes().get(TURNOVER);
        Amount goods = treated.boxes().get(GOODS);
        if (turnover == null && goods == null) {
            return;
        }
        seen = true;
        Map.Entry<LocalDate, Part> at = parts.floorEntry(treated.occasion().day());
        Part part = (at == null ? parts.firstEntry() : at).getValue();
        part.turnover = part.turnover.plus(turnover == null ? Amount.ZERO : turnover);
        part.goods = part.goods.plus(goods == null ? Amount.ZERO : goods);
    }

    @Override
    public Found found() {
        if (!seen) {
            return Found.NOTHING;
        }
        Optional<LimitedCost> limited = limitedCost();
        List<Adjustment> adjustments = new ArrayList<>();
        List<Query> queries = new ArrayList<>();
        Optional<Rate> current = Optional.empty();
        List<Part> together = new ArrayList<>();
        for (Part part : parts.values()) {
            Optional<Rate> rate = rate(part.first, limited);
            if (!together.isEmpty() && !rate.equals(current)) {
                take(together, current, adjustments, queries);
                together.clear();
            }
            current = rate;
            together.add(part);
        }
        take(together, current, adjustments, queries);
        return new Found(adjustments, queries);
    }

    private void take(
            List<Part> together,
            Optional<Rate> rate,
            List<Adjustment> adjustments,
            List<Query> queries) {
        LocalDate first = together.get(0).first;
        LocalDate last = together.get(together.size() - 1).last;
        Amount turnover = together.stream().map(p -> p.turnover).reduce(Amount.ZERO, Amount::plus);
        if (turnover.isZero()) {
            return;
        }
        if (rate.isEmpty()) {
            queries.add(
                    basis.questions()
                            .ask(
                                    "flat-rate-percent",
                                    basis.period().name() + "/" + first,
                                    turnover,
                                    Map.of("date", first.toString(), "sector", sector())));
            return;
        }
        Amount vat = turnover.portion(rate.get().percent());
        adjustments.add(
                basis.adjustment(
                        "flat-rate",
                        first + " to " + last,
                        "Turnover with VAT %s at %s%% is %s. %s"
                                .formatted(turnover, rate.get().percent(), vat, rate.get().words()),
                        turnover.minus(vat),
                        vat,
                        Amount.ZERO));
    }

    private String sector() {
        return basis.settings().flatRateSector().orElse("");
    }

    /** The test of the period, or of the part of it that the test is in force in. */
    private Optional<LimitedCost> limitedCost() {
        List<Part> tested =
                parts.values().stream()
                        .filter(p -> limitedCostPercent(p.first).isPresent())
                        .toList();
        if (tested.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(
                LimitedCost.of(
                        tested.get(0).first,
                        basis.period().end(),
                        tested.stream().map(p -> p.goods).reduce(Amount.ZERO, Amount::plus),
                        tested.stream().map(p -> p.turnover).reduce(Amount.ZERO, Amount::plus),
                        basis));
    }

    private Optional<Percent> limitedCostPercent(LocalDate day) {
        return basis.law()
                .limit("flat-rate-limited-cost", day)
                .map(l -> new Percent(l.value().amount().decimal()));
    }

    private Optional<Rate> rate(LocalDate day, Optional<LimitedCost> test) {
        Optional<LimitedCost> tested = test.filter(t -> limitedCostPercent(day).isPresent());
        String testWords = tested.map(t -> " " + t.words()).orElse("");
        Optional<Rate> full =
                tested.filter(LimitedCost::limited).isPresent()
                        ? limitedCostPercent(day)
                                .map(p -> new Rate(p, p + "% for limited-cost traders"))
                        : basis.law()
                                .flatRate(sector(), day)
                                .map(Dated::value)
                                .map(FlatRateVat::ofSector);
        return full.map(r -> firstYear(r, day))
                .map(r -> new Rate(r.percent(), r.words() + "." + testWords));
    }

    private static Rate ofSector(FlatRate rate) {
        return new Rate(
                rate.percent(),
                "%s%% for sector %s, %s".formatted(rate.percent(), rate.id(), rate.sector()));
    }

    private Rate firstYear(Rate full, LocalDate day) {
        if (!day.isBefore(anniversary()) || !basis.chose("flat-rate-first-year=yes")) {
            return full;
        }
        return basis.law()
                .limit("flat-rate-first-year-discount", day)
                .map(l -> l.value().amount().decimal())
                .map(points -> lower(full, points))
                .orElse(full);
    }

    private Rate lower(Rate full, BigDecimal points) {
        return new Rate(
                new Percent(full.percent().value().subtract(points)),
                "%s, less %s in the first year of registration, to %s"
                        .formatted(
                                full.words(),
                                points.stripTrailingZeros().toPlainString(),
                                anniversary().minusDays(1)));
    }
}
