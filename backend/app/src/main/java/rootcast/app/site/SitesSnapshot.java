package rootcast.app.site;

import java.util.Collection;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import rootcast.site.Site;

/** Sites by code. */
public record SitesSnapshot(Map<String, Site> byCode) {

    public static SitesSnapshot of(Collection<Site> sites) {
        return new SitesSnapshot(sites.stream().collect(Collectors.toUnmodifiableMap(Site::code, Function.identity())));
    }

    /** A site that is known to exist. */
    public Site site(String code) {
        return byCode.get(code);
    }
}
