/** Feed arithmetic over HTTP. Nothing is stored and nothing proposed. */
package rootcast.app.feed;
