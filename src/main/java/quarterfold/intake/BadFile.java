package quarterfold.intake;

/** A fault that ends the reading of a file, as the problem to show. Never our own failure. */
final class BadFile extends Exception {
    private static final long serialVersionUID = 1;

    private final transient Problem problem;

    BadFile(Problem problem) {
        super(problem.toString());
        this.problem = problem;
    }

    BadFile(String place, String fault) {
        this(new Problem(place, "", fault));
    }

    Problem problem() {
        return problem;
    }
}
