/**
 * The main path: from a committed fact to every open screen, in one method. Nothing depends on this package; it starts
 * when a write says that it has committed, and by the clock.
 */
package rootcast.app.flow;
