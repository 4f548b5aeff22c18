package rootcast.app.live.rest;

/**
 * One event of the feed.
 *
 * @param id   the position it brings a screen to; empty for what has none
 * @param data JSON on one line
 */
record FeedEvent(String id, String name, String data) {}
