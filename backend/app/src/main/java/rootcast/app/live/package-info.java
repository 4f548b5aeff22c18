/** The live feed: what changes goes to every open screen, numbered by position. */
package rootcast.app.live;
