package rootcast.app.site.store;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Optional;
import rootcast.ledger.LedgerPosition;
import rootcast.site.House;
import rootcast.site.Site;

/** Sites and houses as stored. */
@ApplicationScoped
@Transactional
public class Places {

    @Inject
    Sites sites;

    @Inject
    Houses houses;

    @Inject
    SiteMapper mapper;

    @ApplicationScoped
    static class Sites implements PanacheRepositoryBase<SiteRow, String> {}

    @ApplicationScoped
    static class Houses implements PanacheRepositoryBase<HouseRow, String> {}

    public List<Site> sites() {
        return sites.list("order by code").stream().map(mapper::site).toList();
    }

    public Optional<Site> site(String code) {
        return sites.findByIdOptional(code).map(mapper::site);
    }

    public void save(Site site, LedgerPosition position) {
        sites.getEntityManager().merge(mapper.row(site, position.value()));
    }

    public List<House> houses() {
        return houses.list("order by code").stream().map(mapper::house).toList();
    }

    public Optional<House> house(String code) {
        return houses.findByIdOptional(code).map(mapper::house);
    }

    public void save(House house, LedgerPosition position) {
        houses.getEntityManager().merge(mapper.row(house, position.value()));
    }
}
