package quarterfold.intake;

/** Who is told how far the bringing in of files has come. */
public interface Watch {

    /** Tells no one. */
    Watch NOBODY =
            new Watch() {
                @Override
                public void file(String name, long done, long all) {}

                @Override
                public void rows(long rows) {}

                @Override
                public void wipe() {}

                @Override
                public void end() {}
            };

    /** A file is begun; of all bytes to be read so many are done. */
    void file(String name, long done, long all);

    /** So many lines of it are entered; told now and then. */
    void rows(long rows);

    /** Something is about to be said: what is shown of this must go. */
    void wipe();

    /** The work was broken off: what is shown of this stays, on a line of its own. */
    void end();
}
