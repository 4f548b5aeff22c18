package rootcast.app.board;

import java.time.Instant;
import rootcast.app.availability.CellSnapshot;
import rootcast.app.availability.PromisesSnapshot;
import rootcast.facts.FactPosition;

/**
 * A cell of the board with what its figures come from, now or as of an instant.
 *
 * @param position of the newest fact in it
 */
public record CellFacts(CellSnapshot cell, PromisesSnapshot promises, FactPosition position, Instant asOf) {}
