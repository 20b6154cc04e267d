package quarterfold.independent;

/** How much is made up: {@code -Dquarterfold.books=N} makes as many books as there is time for. */
final class Checks {

    /** A build's. */
    private static final int USUAL = 21;

    private Checks() {}

    /** So many books in a build, and more or fewer of them where that is asked for. */
    static int books(int usual) {
        return Math.max(1, usual * Integer.getInteger("quarterfold.books", USUAL) / USUAL);
    }
}
