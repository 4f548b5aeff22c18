/**
 * The shared table, live: {@link rootcast.app.board.LiveBoard} makes its rows and tells every open screen what changed.
 */
package rootcast.app.board;
