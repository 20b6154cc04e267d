package quarterfold.papers;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class RenderTest {
    @Test
    void render() throws Exception {
        long t = System.nanoTime();
        WorkingPapers.write(Samples.busy(2000), Path.of("/tmp/qf/render/busy"));
        System.err.println("busy " + (System.nanoTime() - t) / 1e9);
        WorkingPapers.write(Samples.small(), Path.of("/tmp/qf/render/small"));
        WorkingPapers.write(Samples.small(), Path.of("/tmp/qf/render/small2"));
        ListPack big = Samples.busy(100_000);
        for (int i = 0; i < 2; i++) {
            t = System.nanoTime();
            WorkingPapers.write(big, Path.of("/tmp/qf/render/big"));
            System.err.println("big " + (System.nanoTime() - t) / 1e9);
        }
    }
}
