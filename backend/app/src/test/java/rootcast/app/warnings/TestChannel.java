package rootcast.app.warnings;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;

/** A receiver in the test's hands: off unless a test turns it on, refusing when told to. */
@ApplicationScoped
public class TestChannel implements Channel {

    private final List<WrittenWarning> received = new CopyOnWriteArrayList<>();
    private volatile Runnable meanwhile = () -> {};
    private volatile boolean on;
    private volatile boolean refusing;

    void turn(boolean nowOn) {
        on = nowOn;
    }

    void refuse(boolean nowRefusing) {
        refusing = nowRefusing;
    }

    /** What is done before a warning is taken. */
    void whileSending(Runnable work) {
        meanwhile = work;
    }

    List<WrittenWarning> of(String house) {
        return received.stream()
                .filter(written -> written.warning().house().equals(house))
                .toList();
    }

    @Override
    public String name() {
        return "test";
    }

    @Override
    public boolean isOn() {
        return on;
    }

    @Override
    public void send(WrittenWarning warning) throws IOException {
        if (refusing) {
            throw new IOException("not today");
        }
        meanwhile.run();
        received.add(warning);
    }
}
