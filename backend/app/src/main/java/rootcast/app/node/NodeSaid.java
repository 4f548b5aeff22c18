package rootcast.app.node;

/**
 * A node has said something; this one hears itself too.
 *
 * @param text what it said; empty when the line was down and much may have been missed
 */
public record NodeSaid(NodeChannel channel, String text) {}
