package quarterfold.law;

import quarterfold.money.Percent;

/**
 * An expense category and how much of its VAT may never be reclaimed: a row of {@code blocked.csv}.
 */
public record Blocked(Percent blocked, String words) {}
