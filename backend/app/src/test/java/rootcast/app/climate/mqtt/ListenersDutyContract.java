package rootcast.app.climate.mqtt;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.SQLException;
import java.time.Duration;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import rootcast.app.Tables;

/** One node listens at a time, and what the next one hears again is not stored twice. */
abstract class ListenersDutyContract extends WithBroker {

    /** Without a time two messages can only be told apart by the number under which the broker gives them. */
    @Test
    void aMessageWithoutATimeThatTheBrokerGivesAgainIsStoredOnceAlsoByTheNextListener() {
        sensor("a", "medium-temperature", "Cel", 0);
        var acknowledged = new AtomicInteger();
        arrivals.add(message("a", "21", false, 7, false, acknowledged));
        await(() -> acknowledged.get() == 1);

        arrivals.start(); // what another node does when it takes over: it knows only what is written
        time.moveOn(Duration.ofMinutes(5));
        arrivals.add(message("a", "21", false, 7, true, acknowledged));
        arrivals.add(message("a", "21", false, 8, false, acknowledged));
        arrivals.add(message("a", "21", false, 8, true, acknowledged));
        await(() -> acknowledged.get() == 4);

        assertThat(changed("stored")).isEqualTo(2);
        assertThat(changed("duplicates")).isEqualTo(2);
    }

    @Test
    void whileAnotherNodeHasTheDutyThisOneStandsByAndTakesOverOnceItsLeaseHasRunOut() throws SQLException {
        sensor("a", "medium-temperature", "Cel", 0);
        var tables = new Tables(database);
        tables.execute("update node_duty set holder = 'another', held_until = current_timestamp + interval '1' hour"
                + " where duty = 'listen-mqtt'");
        await(() -> ingest.state().state().equals("standby"));
        send("a", "{\"value\": 21, \"at\": \"%s\"}".formatted(hour)); // waits in the session

        tables.execute("update node_duty set held_until = current_timestamp - interval '1' second"
                + " where duty = 'listen-mqtt'");
        await(() -> changed("stored") == 1);

        assertThat(ingest.state().state()).isEqualTo("connected");
    }

    /** What a node that slept through the end of its lease still has in hand is for the next one. */
    @Test
    void whoHasLostTheDutyStoresAndAcknowledgesNothing() throws SQLException {
        sensor("a", "medium-temperature", "Cel", 0);
        var acknowledged = new AtomicInteger();
        new Tables(database)
                .execute("update node_duty set holder = 'another', held_until = current_timestamp + interval '1' hour"
                        + " where duty = 'listen-mqtt'");

        arrivals.add(message("a", "21", false, 7, false, acknowledged));
        await(() -> ingest.state().state().equals("standby"));

        assertThat(acknowledged).hasValue(0);
        assertThat(changed("stored")).isZero();
        new Tables(database)
                .execute("update node_duty set held_until = current_timestamp - interval '1' second"
                        + " where duty = 'listen-mqtt'");
    }
}
