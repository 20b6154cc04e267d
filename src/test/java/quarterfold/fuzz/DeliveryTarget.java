package quarterfold.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import quarterfold.cli.SmallBook;
import quarterfold.intake.Delivery;
import quarterfold.intake.ImportResult;
import quarterfold.intake.Stop;
import quarterfold.intake.Watch;
import quarterfold.ledger.Book;
import quarterfold.ledger.Ledger;

/** ZIPs brought into a book with all that is in them. */
final class DeliveryTarget implements Target {
    private final ImportTarget.Inputs inputs;
    private final Path file;
    private final Path sources;
    private final Ledger ledger;
    private final Delivery delivery;

    DeliveryTarget(Path folder, String name, ImportTarget.Inputs inputs) {
        this.inputs = inputs;
        file = folder.resolve(name);
        Path place = SmallBook.empty(folder);
        Book book = Book.open(place);
        sources = place.resolve("sources");
        ledger = book.ledger();
        delivery = new Delivery(book, ledger, Watch.NOBODY, new Stop());
    }

    @Override
    public byte[] next() throws IOException {
        return inputs.next();
    }

    @Override
    public boolean reads(byte[] input) throws IOException {
        Files.write(file, input);
        List<ImportResult> results = new ArrayList<>();
        delivery.enter(List.of(file), Optional.empty(), results::add);
        assertThat(results).as("nothing is passed over in silence").isNotEmpty();
        boolean taken = false;
        for (ImportResult result : results) {
            if (result instanceof ImportResult.Refused refused) {
                ImportTarget.assertRefused(refused, "fuzz.");
            } else if (result instanceof ImportResult.Entered entered) {
                ImportTarget.assertAddsUp(ledger, entered.source());
            }
            taken |= result instanceof ImportResult.InLedger;
        }
        try (Stream<Path> left = Files.list(sources)) {
            assertThat(left.filter(p -> p.getFileName().toString().startsWith("."))).isEmpty();
        }
        return taken;
    }

    @Override
    public void close() {
        ledger.close();
    }
}
