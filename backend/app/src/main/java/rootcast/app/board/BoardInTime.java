package rootcast.app.board;

import rootcast.app.outlook.AsOf;

/** Looks back at the board, from the tables. */
public interface BoardInTime {

    LiveBoard.Picture board(AsOf when, BoardView view);
}
