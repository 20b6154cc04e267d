package quarterfold.law;

/**
 * A treatment that is under a rule about days: a row of {@code timing.csv}.
 *
 * @param treatment its name in {@code treatments.csv}
 */
public record Timed(String treatment, TimeRule rule) {

    static Timed of(Table.Row row, Treatments treatments) {
        String treatment = row.needed("treatment");
        if (!treatments.has(treatment)) {
            throw row.fault(
                    "[treatment]: found '%s'; expected a treatment of treatments.csv"
                            .formatted(treatment));
        }
        return new Timed(
                treatment,
                row.parse(
                        "rule",
                        text -> TimeRule.find(text).orElseThrow(IllegalArgumentException::new),
                        "export-evidence, supplier-unpaid, bad-debt or cash-accounting"));
    }

    String key() {
        return treatment + " " + rule.code();
    }
}
