package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import quarterfold.ledger.Line;

/**
 * Documents with bytes or elements changed by a seeded hand: each is read or refused with a reason,
 * and what is read has the money its breakdown states.
 */
class EInvoiceFuzzTest {
    private static final int CHANGED = 5_000;

    private static final Layouts LAYOUTS = Layouts.load(List.of());

    private static final RowReader.Output NOWHERE =
            new RowReader.Output() {
                @Override
                public void line(Line line) {}

                @Override
                public void setAside(long number, String reason) {}
            };

    private static MadeInvoice whole() {
        return new MadeInvoice("INV-1001")
                .with("BT-5", "EUR")
                .with("BT-6", "GBP")
                .with("BT-111", "25.61")
                .with("BT-7", "2026-07-18")
                .with("BT-72", "2026-07-17")
                .with("BT-80", "GB")
                .with("BT-25", "INV-0900")
                .line("Bowls", "100.00", "S", "20")
                .line("Books", "30.00", "Z", "0")
                .allowance("10.00", "S", "20")
                .charge("5.00", "S", "20");
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void everyDocumentIsReadOrRefused(long seed) throws IOException {
        Random random = new Random(seed);
        String text = seed % 2 == 0 ? whole().ubl() : whole().cii();
        int read = 0;
        for (int i = 0; i < CHANGED; i++) {
            byte[] bytes =
                    random.nextBoolean()
                            ? bytesChanged(text, random)
                            : linesChanged(text, random).getBytes(StandardCharsets.UTF_8);
            read += isRead(bytes) ? 1 : 0;
        }
        assertThat(read).isBetween(CHANGED / 100, CHANGED - CHANGED / 10);
    }

    private static byte[] bytesChanged(String text, Random random) {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        int changes = 1 + random.nextInt(3);
        for (int i = 0; i < changes; i++) {
            bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
        }
        return random.nextInt(10) == 0 ? Arrays.copyOf(bytes, random.nextInt(bytes.length)) : bytes;
    }

    /** Lines taken out, repeated, moved, or with other digits in them. */
    private static String linesChanged(String text, Random random) {
        List<String> lines = new ArrayList<>(text.lines().toList());
        int at = random.nextInt(lines.size());
        switch (random.nextInt(4)) {
            case 0 -> lines.remove(at);
            case 1 -> lines.add(at, lines.get(random.nextInt(lines.size())));
            case 2 -> lines.set(at, lines.get(at).replaceAll("[0-9]", "9"));
            default -> lines.set(at, lines.get(at).replaceAll(">[^<]+<", "><"));
        }
        return String.join("\n", lines);
    }

    private static boolean isRead(byte[] bytes) throws IOException {
        Problems problems = new Problems();
        Brought file = new Brought(Path.of("a.xml"), "a.xml", Desk.settings(), LAYOUTS, problems);
        Head head = Head.of(new ByteArrayInputStream(bytes));
        try (Reading reading =
                EInvoice.open(
                        file, "a.xml", head, new ByteArrayInputStream(bytes), InvoicePages.NONE)) {
            if (!problems.none()) {
                return false;
            }
            while (reading.next()) {
                reading.read(NOWHERE);
            }
            reading.finish();
            reading.raise((code, about, question) -> assertThat(question).isNotBlank());
            return true;
        } catch (BadFile refused) {
            assertThat(refused.problem().fault()).contains("found ").contains("; expected ");
            return false;
        }
    }
}
