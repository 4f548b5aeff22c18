package rootcast.app.people;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rootcast.app.problem.Problem;
import rootcast.saying.Fault;

/** Which grants may be given, and how a directory writes them. */
@ApplicationScoped
class GrantRules {

    @Inject
    KnownSites sites;

    void checkForPeople(List<Grant> grants) {
        check(grants, false);
    }

    void checkForKeys(List<Grant> grants) {
        check(grants, true);
        if (grants.isEmpty()) {
            throw Problem.malformed("grants", Fault.TOO_FEW, 1);
        }
    }

    private void check(List<Grant> grants, boolean forKeys) {
        if (new HashSet<>(grants).size() < grants.size()) {
            throw Problem.malformed("grants", Fault.TWICE);
        }
        for (int i = 0; i < grants.size(); i++) {
            Grant grant = grants.get(i);
            String field = "grants[" + i + "].";
            if (grant.role().isForKeys() != forKeys) {
                throw Problem.notAllowed(
                        field + "role", grant.role().name(), forKeys ? Fault.ROLE_FOR_PEOPLE : Fault.ROLE_FOR_KEYS);
            }
            String site = grant.site();
            if (site != null && grant.role() == Role.OWNER) {
                throw Problem.notAllowed(field + "site", site, Fault.OWNER_OWNS_ALL);
            }
            if (site != null && !sites.isKnown(site)) {
                throw Problem.unknownCode(field + "site", site);
            }
        }
    }

    /** {@code MANAGER}, or {@code PRODUCTION@NORTH}; empty for what is no grant of ours, which a directory is full of. */
    Optional<Grant> read(String text) {
        int at = text.indexOf('@');
        String name = at < 0 ? text : text.substring(0, at);
        @Nullable String site = at < 0 ? null : text.substring(at + 1);
        for (Role role : Role.values()) {
            if (role.name().equals(name) && !role.isForKeys()) {
                boolean possible = site == null || role != Role.OWNER && sites.isKnown(site);
                return possible ? Optional.of(new Grant(role, site)) : Optional.empty();
            }
        }
        return Optional.empty();
    }
}
