package rootcast.app.live;

import rootcast.app.snapshot.Snapshot;

/** The open screens, as the projector sees them. Neither call waits for a screen. */
public interface LiveFeed {

    /** All was rebuilt: what is remembered for screens that come back is void. */
    void startOver();

    /**
     * Called in order, and before the snapshot that the changes lead to is published: whoever has read it and opens a
     * screen then comes after these changes.
     */
    void tell(Changes changes, Snapshot now);
}
