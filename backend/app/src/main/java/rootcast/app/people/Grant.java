package rootcast.app.people;

import org.jspecify.annotations.Nullable;

/**
 * A role at a site.
 *
 * @param site null for all sites
 */
public record Grant(Role role, @Nullable String site) {

    boolean gives(Right right, String asked) {
        return role.holds(right) && (site == null || site.equals(asked) || readsEverySite(right));
    }

    boolean givesEverywhere(Right right) {
        return role.holds(right) && (site == null || readsEverySite(right));
    }

    private boolean readsEverySite(Right right) {
        return (right == Right.READ || right == Right.READ_ORDERS) && role.readsEverySite();
    }
}
