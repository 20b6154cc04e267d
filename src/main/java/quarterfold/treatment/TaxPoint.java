package quarterfold.treatment;

import java.time.LocalDate;

/**
 * A tax point: the day a supply, or a part of it, is treated as made.
 *
 * @param share how much of the supply
 */
record TaxPoint(LocalDate day, Share share) {}
