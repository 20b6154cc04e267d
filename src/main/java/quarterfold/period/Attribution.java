package quarterfold.period;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Optional;
import quarterfold.law.Law;
import quarterfold.money.Amount;
import quarterfold.money.Percent;

/**
 * The standard method of partial exemption over a period or a year (VAT Regulations 1995 reg
 * 101(2)) and whether what exempt supplies cost is small enough to be deducted all the same (reg
 * 105A and reg 106; HMRC manual PE24500).
 *
 * @param exemptInput input tax attributed to exempt supplies, before the tests
 * @param denied what is not deducted: that, or nothing where a test is met
 * @param words the whole working, as sentences
 */
record Attribution(Amount exemptInput, Amount denied, String words) {

    /** A test and how it came out. */
    private record Test(boolean met, String words) {}

    /**
     * Purchases that do not state their use are taken to be for exempt supplies until they do.
     *
     * @param day the first of the span: the limits are those in force on it
     */
    static Attribution of(
            UseSums sums, RecoveryShare share, Months months, Law law, LocalDate day) {
        Amount deducted = sums.residual().portion(share.percent());
        Amount exemptInput =
                sums.forExempt().plus(sums.unstated()).plus(sums.residual()).minus(deducted);
        StringBuilder words = new StringBuilder();
        words.append(
                "Input tax %s: %s used for taxable supplies, %s for exempt ones, %s for both"
                        .formatted(
                                sums.allInput(),
                                sums.forTaxable(),
                                sums.forExempt(),
                                sums.residual()));
        if (!sums.unstated().isZero()) {
            words.append(", %s not stated and taken as exempt".formatted(sums.unstated()));
        }
        words.append(". ");
        if (!sums.residual().isZero()) {
            words.append(
                    "Of the part for both %s%% is for taxable supplies, which is %s (%s). "
                            .formatted(share.percent(), deducted, share.words()));
        }
        words.append("For exempt supplies: %s. ".formatted(exemptInput));
        if (exemptInput.isZero()) {
            words.append("All of it is deducted.");
            return new Attribution(exemptInput, Amount.ZERO, words.toString());
        }
        Optional<Test> simple = simple(sums, months, law, day);
        simple.ifPresent(t -> words.append(t.words()));
        if (simple.filter(Test::met).isPresent()) {
            return new Attribution(exemptInput, Amount.ZERO, words.toString());
        }
        Test full = full(sums, exemptInput, months, law, day);
        words.append(full.words());
        return new Attribution(
                exemptInput, full.met() ? Amount.ZERO : exemptInput, words.toString());
    }

    /** Reg 105A(1), since 1 April 2010. */
    private static Optional<Test> simple(UseSums sums, Months months, Law law, LocalDate day) {
        return law.limit("partial-exemption-simple-month", day)
                .map(
                        monthly -> {
                            Amount most = months.of(monthly.value().amount());
                            Amount left = sums.allInput().minus(sums.forTaxable());
                            Percent half = percent(law, "partial-exemption-simple-percent", day);
                            boolean small = left.compareTo(most) <= 0;
                            boolean minor = within(sums.exemptSupplies(), half, sums.supplies());
                            return new Test(
                                    small && minor,
                                    "Input tax other than for taxable supplies, %s, is %s %s (%s a month for %s), and exempt supplies, %s, are %s %s%% of all supplies, %s: %s"
                                            .formatted(
                                                    left,
                                                    small ? "not above" : "above",
                                                    most,
                                                    monthly.value().amount(),
                                                    months,
                                                    sums.exemptSupplies(),
                                                    minor ? "not above" : "above",
                                                    half,
                                                    sums.supplies(),
                                                    small && minor
                                                            ? "all is deducted."
                                                            : "the simpler test is not met. "));
                        });
    }

    /** Reg 106(1). */
    private static Test full(
            UseSums sums, Amount exemptInput, Months months, Law law, LocalDate day) {
        Amount monthly =
                law.limit("partial-exemption-month", day)
                        .map(l -> l.value().amount())
                        .orElse(Amount.ZERO);
        Amount most = months.of(monthly);
        Percent half = percent(law, "partial-exemption-percent", day);
        boolean small = exemptInput.compareTo(most) <= 0;
        boolean minor = within(exemptInput, half, sums.allInput());
        return new Test(
                small && minor,
                "Input tax for exempt supplies, %s, is %s %s (%s a month for %s) and %s %s%% of all input tax, %s: %s."
                        .formatted(
                                exemptInput,
                                small ? "not above" : "above",
                                most,
                                monthly,
                                months,
                                minor ? "not above" : "above",
                                half,
                                sums.allInput(),
                                small && minor ? "all is deducted" : "it is not deducted"));
    }

    private static Percent percent(Law law, String name, LocalDate day) {
        return law.limit(name, day)
                .map(l -> new Percent(l.value().amount().decimal()))
                .orElse(Percent.ZERO);
    }

    /** Whether a part is not more than so many per cent of the whole, without any rounding. */
    private static boolean within(Amount part, Percent percent, Amount whole) {
        return part.decimal()
                        .multiply(BigDecimal.valueOf(100))
                        .compareTo(whole.decimal().multiply(percent.value()))
                <= 0;
    }
}
