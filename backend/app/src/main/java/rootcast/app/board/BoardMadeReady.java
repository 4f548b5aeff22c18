package rootcast.app.board;

import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import java.time.InstantSource;
import org.jboss.logging.Logger;
import rootcast.app.snapshot.Snapshots;

/**
 * Computes the board as people usually open it once the application has started, so that the first of them does not wait for
 * what a new process has to work out once: at 6 000 batches that is seconds.
 */
@ApplicationScoped
public class BoardMadeReady {

    private static final Logger LOG = Logger.getLogger(BoardMadeReady.class);

    @Inject
    LiveBoard board;

    @Inject
    Snapshots snapshots;

    @Inject
    InstantSource time;

    /** After the first snapshot, beside the first requests, which go before it. */
    void start(@Observes @Priority(300) StartupEvent event) {
        Thread thread = new Thread(this::compute, "board-made-ready");
        thread.setDaemon(true);
        thread.setPriority(Thread.MIN_PRIORITY);
        thread.start();
    }

    private void compute() {
        try {
            BoardView usual = BoardView.usual(board.currentWeek(null, time.instant()));
            snapshots.now().part(RowsSnapshot.class).computeAhead(usual);
        } catch (RuntimeException fault) {
            LOG.warn("the board was not computed ahead; whoever opens it first waits for it", fault);
        }
    }
}
