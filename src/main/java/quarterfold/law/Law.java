package quarterfold.law;

import java.util.List;

/** A country's tables. */
public record Law(List<TableFile> files, List<Box> form) {}
