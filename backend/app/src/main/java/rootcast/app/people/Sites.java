package rootcast.app.people;

import java.util.Set;

/**
 * The sites that somebody may see.
 *
 * @param all   every site, also those opened later
 * @param codes those, if not all
 */
public record Sites(boolean all, Set<String> codes) {

    public Sites {
        codes = Set.copyOf(codes);
    }

    public boolean includes(String site) {
        return all || codes.contains(site);
    }
}
