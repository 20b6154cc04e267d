package quarterfold.ledger;

/** A row that made no entry, and why. */
public record SetAside(long source, long row, String reason) {}
