package quarterfold.ledger;

import java.nio.file.Path;

/**
 * A file brought in: the book's own copy of it, which no one changes.
 *
 * @param path the copy
 * @param sha256 of its bytes, 64 lower-case hexadecimal digits
 * @param name the file's own name, without folders
 * @param made whether this copy was made now, and not found as an earlier or another import's
 */
public record Archived(Path path, String sha256, String name, boolean made) {}
