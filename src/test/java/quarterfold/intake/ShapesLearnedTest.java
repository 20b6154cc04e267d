package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.ledger.Line;

/** What learning finds in files with rows of several shapes; the whole layouts it writes. */
class ShapesLearnedTest {
    @TempDir private Path folder;
    private final List<Line> lines = new ArrayList<>();

    private Learned learn(Path file, Map<String, String> answers) throws IOException {
        lines.clear();
        return new Learner(Desk.settings()).learn(file, "report", answers, lines::add);
    }

    private Learned learn(String text) throws IOException {
        return learn(Files.writeString(folder.resolve("report.txt"), text), Map.of());
    }

    static final String RECORDS =
            """
            H|Quaylark|20260731|0001
            T|20260703|N-1|Sale|30.00
            F|20260703|Commission|-4.00
            T|20260704|N-2|Sale|20.00
            R|20260705|N-1|-10.00
            F|20260731|Advertising|-6.00
            T|20260731||Payout|-30.00
            Z|6|8|0.00|30.00
            """;

    static final String STACKED =
            """
            Quaylark July 2026
            Payout,,,40.00
            Date,Order,Type,Amount
            2026-07-03,N-1,Sale,30.00
            2026-07-04,N-2,Sale,20.00
            Total,,,50.00

            Fees
            Date,Fee type,Charge
            2026-07-03,Commission,-4.00
            2026-07-31,Advertising,-6.00
            Total,,-10.00
            Paid out,,40.00
            """;

    @Test
    void dump() throws IOException {
        for (String t : List.of(RECORDS, STACKED)) {
            Learned l = learn(t);
            System.out.println(l.proofs());
            System.out.println(l.faults());
            System.out.println(l.notes());
            System.out.println(l.open());
            System.out.println(l.yaml().orElse("NONE"));
            lines.forEach(x -> System.out.println(x.taxPoint() + " " + x.profile().kind().code() + " " + x.signedMoney()));
        }
    }
}
