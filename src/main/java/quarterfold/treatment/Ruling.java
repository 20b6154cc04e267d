package quarterfold.treatment;

import java.util.List;
import java.util.Optional;
import quarterfold.law.BoxRule;
import quarterfold.law.TreatmentRow;
import quarterfold.money.Percent;

/**
 * What the tables decide for every entry of the same facts between two changes of the law.
 *
 * @param rate the percentage to work with; empty where no rate applies
 * @param rateWords the rate as a person reads it, such as {@code 20%}; or empty
 * @param deductible the share of the VAT that is not blocked
 * @param boxes what the treatment adds to which box
 */
record Ruling(
        TreatmentRow row,
        String citation,
        Optional<Percent> rate,
        String rateWords,
        Percent deductible,
        List<BoxRule> boxes) {}
