package quarterfold.law;

/**
 * What a treatment adds to a box: a row of {@code boxes.csv}.
 *
 * @param sign 1 to add, -1 to take away
 */
public record BoxRule(String treatment, String box, Measure measure, int sign) {}
