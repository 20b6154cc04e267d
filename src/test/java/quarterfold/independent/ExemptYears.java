package quarterfold.independent;

import java.math.BigDecimal;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.NavigableMap;
import java.util.Optional;

/**
 * What is not deducted of each quarter's input tax, and what the annual adjustment gives back or
 * takes: VAT Regulations 1995 regs 99, 101(2) and 107(1); HMRC manual PE37400. Tax years end in
 * March.
 *
 * @param quarters by the month they end in, from the registration on
 * @param byLastYear whether a quarter goes by the share of the year before, where there is one
 */
record ExemptYears(NavigableMap<YearMonth, UseQuarter> quarters, boolean byLastYear) {

    /** A longer period: the quarters the annual adjustment is about. */
    private record Longer(List<YearMonth> names, UseQuarter sum) {}

    private static YearMonth yearOf(YearMonth quarter) {
        return quarter.getMonthValue() <= 3
                ? quarter.withMonth(3)
                : quarter.plusYears(1).withMonth(3);
    }

    private NavigableMap<YearMonth, UseQuarter> year(YearMonth end) {
        return quarters.subMap(end.minusMonths(11), true, end, true);
    }

    private static UseQuarter sum(Iterable<UseQuarter> quarters) {
        UseQuarter sum = UseQuarter.NOTHING;
        for (UseQuarter quarter : quarters) {
            sum = sum.plus(quarter);
        }
        return sum;
    }

    /** Of the longer period before, if there was one and the quarters go by it; else its own. */
    private BigDecimal share(YearMonth name) {
        UseQuarter own = quarters.getOrDefault(name, UseQuarter.NOTHING);
        return longer(yearOf(name).minusYears(1))
                .filter(before -> byLastYear)
                .map(before -> before.sum().share())
                .orElseGet(own::share);
    }

    /** Nothing while a tax year has nothing exempt about it. */
    BigDecimal denied(YearMonth name) {
        UseQuarter soFar = sum(year(yearOf(name)).headMap(name, true).values());
        UseQuarter own = quarters.getOrDefault(name, UseQuarter.NOTHING);
        return soFar.partly() ? own.denied(share(name), 3) : BigDecimal.ZERO;
    }

    private BigDecimal exemptInput(YearMonth name) {
        UseQuarter soFar = sum(year(yearOf(name)).headMap(name, true).values());
        UseQuarter own = quarters.getOrDefault(name, UseQuarter.NOTHING);
        return soFar.partly() ? own.exemptInput(share(name)) : BigDecimal.ZERO;
    }

    private boolean hasExemptInput(YearMonth year) {
        return year(year).keySet().stream().anyMatch(q -> exemptInput(q).signum() != 0);
    }

    /**
     * From the first exempt input tax on, or all of the year where the year before had some; none
     * where only the last quarter of a tax year has some, which that before the first is not.
     */
    private Optional<Longer> longer(YearMonth year) {
        boolean begun = hasExemptInput(year.minusYears(1));
        List<YearMonth> names = new ArrayList<>();
        for (YearMonth name : year(year).keySet()) {
            begun |= exemptInput(name).signum() != 0;
            if (begun) {
                names.add(name);
            }
        }
        boolean lastAlone =
                names.size() == 1
                        && !hasExemptInput(year.minusYears(1))
                        && quarters.firstKey().isBefore(year.minusMonths(11));
        return lastAlone || !hasExemptInput(year)
                ? Optional.empty()
                : Optional.of(
                        new Longer(
                                names,
                                sum(quarters.subMap(names.get(0), true, year, true).values())));
    }

    /** What the year that ends in March gives back; a minus takes. */
    BigDecimal adjustment(YearMonth year) {
        return longer(year)
                .map(
                        l ->
                                l.names().stream()
                                        .map(this::denied)
                                        .reduce(BigDecimal.ZERO, BigDecimal::add)
                                        .subtract(
                                                l.sum()
                                                        .denied(
                                                                l.sum().share(),
                                                                3 * l.names().size())))
                .orElse(BigDecimal.ZERO);
    }
}
