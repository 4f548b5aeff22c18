/**
 * The shared table: variety × tray format × site by ship week.
 *
 * <p>{@link rootcast.board.BoardModel} makes a {@link rootcast.board.BoardRow} from what a cell of {@code availability}
 * holds, {@link rootcast.board.CellExplanation} opens one figure, {@link rootcast.board.BoardChange} says what differs
 * between two snapshots.
 */
@NullMarked
package rootcast.board;

import org.jspecify.annotations.NullMarked;
