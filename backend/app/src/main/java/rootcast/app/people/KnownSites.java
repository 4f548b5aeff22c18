package rootcast.app.people;

/** Whether a site is one of ours; sites know people, so people cannot ask them but through this. */
public interface KnownSites {

    boolean isKnown(String code);
}
