/**
 * The main path: from committed facts to the snapshot that readers share and to every open screen, on a thread of its
 * own. Nothing depends on this package; it is woken by commits, here and on other nodes, and by the clock.
 */
package rootcast.app.flow;
