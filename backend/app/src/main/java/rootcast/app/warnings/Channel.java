package rootcast.app.warnings;

import java.io.IOException;

/** A way to tell people who do not look at a screen. */
public interface Channel {

    /** Short, kept in the log. */
    String name();

    /** Whether anybody is to be told through it. */
    boolean isOn();

    /**
     * Returns once the other side has taken it.
     *
     * @throws IOException if it has not, or not certainly; it is then sent again, perhaps a second time
     */
    void send(WrittenWarning warning) throws IOException, InterruptedException;
}
