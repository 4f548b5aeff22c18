package rootcast.app.site;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Collection;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import rootcast.site.Site;

/** Sites as they are now. Changed only by {@code flow}; read by anyone. */
@ApplicationScoped
public class LiveSites {

    private volatile Map<String, Site> sites = Map.of();

    public void sites(Collection<Site> now) {
        sites = now.stream().collect(Collectors.toUnmodifiableMap(Site::code, Function.identity()));
    }

    /** A site that is known to exist. */
    public Site site(String code) {
        return sites.get(code);
    }

    public Collection<Site> sites() {
        return sites.values();
    }
}
