package rootcast.app.outlook;

/** Looks back at a batch, from the tables. */
public interface BatchesInTime {

    /** Refuses if there was no such batch by then. */
    BatchInTime batch(String id, AsOf when);
}
