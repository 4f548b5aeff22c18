package rootcast.app.board;

/** The open screens, as the board sees them. */
public interface Screens {

    boolean isWatched(BoardView view);

    /** Everything is made anew: what was remembered for screens that come back is void. */
    void forget();

    /** Called in order of position, with the kept views already up to date. */
    void publish(BoardChanges changes, LiveBoard board);
}
