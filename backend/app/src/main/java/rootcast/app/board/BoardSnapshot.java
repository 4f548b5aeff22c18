package rootcast.app.board;

import java.time.Instant;
import java.util.List;
import rootcast.facts.FactPosition;

/**
 * The board under one view, now or as it was.
 *
 * @param rows in order of variety, tray format and site
 */
public record BoardSnapshot(FactPosition position, Instant asOf, BoardView view, List<ShownRow> rows) {}
