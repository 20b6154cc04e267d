package quarterfold.period;

/** What became of a close. */
public sealed interface CloseResult {

    /** The period is frozen. */
    record Closed(VatReturn vatReturn) implements CloseResult {}

    /**
     * Open questions hold it, and nothing was written.
     *
     * @param draft the return as it stands, with its questions
     */
    record Held(VatReturn draft) implements CloseResult {}

    /** An earlier period is open and has entries, and nothing was written. */
    record OutOfTurn(Period period, Period before) implements CloseResult {}
}
