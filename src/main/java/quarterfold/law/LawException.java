package quarterfold.law;

/**
 * A table that cannot be used as it stands. The message names the file and line and what to mend.
 */
public final class LawException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    LawException(String message) {
        super(message);
    }

    LawException(String message, Throwable cause) {
        super(message, cause);
    }
}
