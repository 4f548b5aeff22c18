package rootcast.app.live;

import rootcast.app.snapshot.Snapshot;

/** The open screens, as the projector sees them. Neither call waits for a screen. */
public interface LiveFeed {

    /** All was rebuilt: what is remembered for screens that come back is void. */
    void startOver();

    /** Called in order, with the snapshot that the changes lead to already published. */
    void tell(Changes changes, Snapshot now);
}
