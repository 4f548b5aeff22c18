package rootcast.app.demo;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

/**
 * An order of an invented customer.
 *
 * @param id         the same at every load: good as an idempotency key
 * @param confidence at which its lines are to be promised
 * @param recordedAt when it was taken
 * @param lines      in order; the first is line 1
 */
public record DemoOrder(UUID id, String customer, double confidence, Instant recordedAt, List<Line> lines) {

    public record Line(String variety, String trayFormat, String site, LocalDate shipOn, int trays) {}
}
