package quarterfold.law;

import java.util.Set;

/**
 * What a treatment adds to a box: a row of {@code boxes.csv}.
 *
 * @param sign 1 to add, -1 to take away
 * @param schemes the accounting schemes it is for; empty for all
 * @param account the line of the VAT account it stands on, such as {@code output-tax}; empty for a
 *     box that is no VAT
 */
public record BoxRule(
        String treatment,
        String box,
        Measure measure,
        int sign,
        Set<String> schemes,
        String account) {

    public BoxRule {
        schemes = Set.copyOf(schemes);
    }

    boolean isFor(String scheme) {
        return schemes.isEmpty() || schemes.contains(scheme);
    }
}
