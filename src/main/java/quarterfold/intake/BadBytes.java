package quarterfold.intake;

import java.io.IOException;

/** Bytes that cannot be had whole, because of what the file they are packed in says. */
final class BadBytes extends IOException {
    private static final long serialVersionUID = 1;

    private final transient Problem problem;

    BadBytes(String place, String fault) {
        super(fault);
        problem = new Problem(place, "", fault);
    }

    Problem problem() {
        return problem;
    }
}
