package quarterfold.law;

/**
 * One table as it was read, for freezing with a close and for showing what was used.
 *
 * @param name such as {@code rates.csv}
 * @param sha256 64 lower-case hexadecimal digits
 * @param text the whole file
 */
public record TableFile(String name, String sha256, String text) {}
