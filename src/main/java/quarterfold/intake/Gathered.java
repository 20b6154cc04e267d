package quarterfold.intake;

/** What is found in a folder or ZIP, as it is found. */
interface Gathered {

    void file(Piece piece);

    /**
     * A ZIP that says it holds so many files of so many bytes, before any of them.
     *
     * @throws BadFile if that is too much with what the ZIPs before it hold
     */
    void zip(String name, int files, long bytes) throws BadFile;

    /** A file that cannot be what it should. */
    void refused(String name, String fault);

    /** A file that is none to be read, and why. */
    void passedOver(String name, String reason);

    /** A file that a system keeps for itself in what was named. */
    void hidden(String named, String file);
}
