package quarterfold.outlook;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Arrays;
import java.util.List;
import quarterfold.law.Law;
import quarterfold.ledger.AnnualAccounting;
import quarterfold.ledger.PaymentsOnAccount;
import quarterfold.money.Amount;
import quarterfold.money.Percent;
import quarterfold.money.Rounding;
import quarterfold.period.Period;

/**
 * Payments within a period: instalments under annual accounting (VAT Regulations 1995 Part VII;
 * HMRC manual VATAAS5100), and payments on account (VAT Notice 700/60; HMRC manual VDSOG400).
 */
record Interims(Law law, WorkingDays days) {

    /** None for a first year so short that it has none. */
    List<Interim> instalments(Period year, AnnualAccounting annual) {
        String often = annual.instalments().code();
        int shortYear = Integer.parseInt(rule("annual-short-year-months", year));
        if (year.end().isBefore(year.start().plusMonths(shortYear).minusDays(1))) {
            return List.of();
        }
        Percent share = Percent.of(rule("annual-instalment-" + often + "-percent", year));
        return each(
                year,
                rule("annual-instalments-" + often, year),
                annual.lastYearVat().portion(share).rounded(Rounding.NEAREST_PENNY));
    }

    List<Interim> onAccount(Period quarter, PaymentsOnAccount onAccount) {
        return each(
                quarter,
                rule("payments-on-account-months", quarter),
                onAccount(onAccount.yearlyVat(), rule("payments-on-account-share", quarter)));
    }

    /** One part of so many of the yearly VAT, to the penny. */
    private static Amount onAccount(Amount yearly, String parts) {
        return yearly.shared(Amount.of(BigDecimal.ONE), Amount.of(parts))
                .rounded(Rounding.NEAREST_PENNY);
    }

    /** The same amount on the last working day of each of the months, counted from 1. */
    private List<Interim> each(Period period, String months, Amount amount) {
        YearMonth first = YearMonth.from(period.start());
        return Arrays.stream(months.split(" ", -1))
                .map(n -> first.plusMonths(Long.parseLong(n) - 1).atEndOfMonth())
                .filter(day -> !day.isAfter(period.end()))
                .map(day -> new Interim(days.onOrBefore(day), amount))
                .toList();
    }

    private String rule(String name, Period period) {
        LocalDate day = period.start();
        return law.periodRule(name, day).value();
    }
}
