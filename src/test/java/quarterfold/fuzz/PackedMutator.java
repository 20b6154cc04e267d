package quarterfold.fuzz;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;

/** Breaks packed files: two times in three one of their parts, else the packed bytes themselves. */
final class PackedMutator {
    private final Mutator mutator;

    PackedMutator(long seed, List<byte[]> seeds) {
        this.mutator = new Mutator(seed, seeds);
    }

    byte[] next() throws IOException {
        if (mutator.below(3) == 0) {
            return mutator.next();
        }
        Map<String, byte[]> parts = parts(mutator.seed());
        List<String> names = new ArrayList<>(parts.keySet());
        if (names.isEmpty()) {
            return mutator.next(); // a seed that is broken itself
        }
        int changes = 1 + mutator.below(2);
        for (int i = 0; i < changes; i++) {
            String name = names.get(mutator.below(names.size()));
            parts.put(name, mutator.changed(parts.getOrDefault(name, new byte[0])));
        }
        return packed(parts);
    }

    private static Map<String, byte[]> parts(byte[] packed) throws IOException {
        Map<String, byte[]> parts = new LinkedHashMap<>();
        try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(packed))) {
            for (ZipEntry part = in.getNextEntry(); part != null; part = in.getNextEntry()) {
                parts.put(part.getName(), in.readAllBytes());
            }
        } catch (IOException | IllegalArgumentException broken) {
            return new LinkedHashMap<>();
        }
        return parts;
    }

    private static byte[] packed(Map<String, byte[]> parts) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream out = new ZipOutputStream(bytes)) {
            for (Map.Entry<String, byte[]> part : parts.entrySet()) {
                ZipEntry entry = new ZipEntry(part.getKey());
                entry.setTime(1_767_225_600_000L); // 2026, so that a seed gives the same bytes
                out.putNextEntry(entry);
                out.write(part.getValue());
            }
        }
        return bytes.toByteArray();
    }
}
