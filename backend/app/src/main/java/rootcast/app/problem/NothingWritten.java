package rootcast.app.problem;

/** A fault inside a write's transaction, all of which was rolled back. */
public final class NothingWritten extends RuntimeException {

    private static final long serialVersionUID = 1L;

    public NothingWritten(RuntimeException fault) {
        super(fault.getMessage(), fault, false, false);
    }
}
