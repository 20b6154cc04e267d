package quarterfold.ledger;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;

/** An I/O failure in words: Java's own messages are often only the name of the file. */
public final class IoText {
    private IoText() {}

    /** The file, where the failure names one, and what is wrong with it. */
    public static String withFile(IOException failure) {
        return failure instanceof FileSystemException f && f.getFile() != null
                ? f.getFile() + ": " + of(failure)
                : of(failure);
    }

    static String of(IOException failure) {
        if (failure instanceof NoSuchFileException) {
            return "there is no such file";
        }
        if (failure instanceof FileAlreadyExistsException) {
            return "something else of this name is in the way";
        }
        if (failure instanceof AccessDeniedException) {
            return "permission denied";
        }
        if (failure instanceof FileSystemException f && f.getReason() != null) {
            return f.getReason();
        }
        String message = failure.getMessage();
        return message == null ? failure.getClass().getSimpleName() : message;
    }
}
