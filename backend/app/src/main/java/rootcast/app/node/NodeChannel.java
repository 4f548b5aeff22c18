package rootcast.app.node;

/** What nodes tell one another of. */
public enum NodeChannel {
    /** The position of a commit. */
    COMMITS("rootcast_commits"),
    /** A site and its warnings that are new, have changed or have ended. */
    WARNINGS("rootcast_warnings");

    private final String sqlName;

    NodeChannel(String sqlName) {
        this.sqlName = sqlName;
    }

    /** As the database knows it. */
    public String sqlName() {
        return sqlName;
    }

    static NodeChannel of(String sqlName) {
        for (NodeChannel channel : values()) {
            if (channel.sqlName.equals(sqlName)) {
                return channel;
            }
        }
        throw new IllegalArgumentException("no channel of ours: " + sqlName);
    }
}
