package rootcast.app.board;

import rootcast.app.outlook.AsOf;
import rootcast.availability.Cell;

/** Looks back at the board, from the tables. */
public interface BoardInTime {

    BoardSnapshot board(AsOf when, BoardView view);

    CellFacts cell(AsOf when, Cell cell);
}
