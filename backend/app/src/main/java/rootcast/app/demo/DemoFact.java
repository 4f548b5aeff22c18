package rootcast.app.demo;

import java.time.Instant;

/** Something that people of the demo recorded: a batch that was stuck, or an entry of one. */
public sealed interface DemoFact permits DemoBatch, DemoEntry {

    Instant recordedAt();
}
