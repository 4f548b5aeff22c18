package rootcast.app.site.store;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Optional;
import rootcast.app.site.HousePlans;
import rootcast.app.site.PlannedSetpoint;
import rootcast.app.site.StatedMove;
import rootcast.facts.FactPosition;
import rootcast.outlook.UsualMove;
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
    Setpoints setpoints;

    @Inject
    UsualMoves usualMoves;

    @Inject
    SiteMapper mapper;

    @ApplicationScoped
    static class Sites implements PanacheRepositoryBase<SiteRow, String> {}

    @ApplicationScoped
    static class Houses implements PanacheRepositoryBase<HouseRow, String> {}

    @ApplicationScoped
    static class Setpoints implements PanacheRepositoryBase<HouseSetpointRow, Long> {}

    @ApplicationScoped
    static class UsualMoves implements PanacheRepositoryBase<HouseUsualMoveRow, Long> {}

    public List<Site> sites() {
        return sites.list("order by code").stream().map(mapper::site).toList();
    }

    public Optional<Site> site(String code) {
        return sites.findByIdOptional(code).map(mapper::site);
    }

    public void save(Site site, FactPosition position) {
        sites.getEntityManager().merge(mapper.row(site, position.value()));
    }

    public List<House> houses() {
        return houses.list("order by code").stream().map(mapper::house).toList();
    }

    public Optional<House> house(String code) {
        return houses.findByIdOptional(code).map(mapper::house);
    }

    public void save(House house, FactPosition position) {
        houses.getEntityManager().merge(mapper.row(house, position.value()));
    }

    /** In the order in which it was recorded. */
    public HousePlans plans() {
        return new HousePlans(
                setpoints.list("order by positionNo").stream()
                        .map(Places::setpoint)
                        .toList(),
                usualMoves.list("order by positionNo").stream()
                        .map(Places::usualMove)
                        .toList());
    }

    public void add(StatedMove stated, FactPosition position) {
        HouseUsualMoveRow row = new HouseUsualMoveRow();
        row.positionNo = position.value();
        row.house = stated.house();
        row.reached = stated.move() == null ? null : stated.move().reached();
        row.nextHouse = stated.move() == null ? null : stated.move().to();
        row.recordedAt = stated.recordedAt();
        usualMoves.persist(row);
    }

    private static StatedMove usualMove(HouseUsualMoveRow row) {
        return new StatedMove(
                row.house, row.nextHouse == null ? null : new UsualMove(row.reached, row.nextHouse), row.recordedAt);
    }

    public List<PlannedSetpoint> setpointsOf(String house) {
        return setpoints.list("house = ?1 order by fromAt, positionNo", house).stream()
                .map(Places::setpoint)
                .toList();
    }

    public void add(PlannedSetpoint planned, FactPosition position) {
        HouseSetpointRow row = new HouseSetpointRow();
        row.positionNo = position.value();
        row.house = planned.house();
        row.fromAt = planned.from();
        row.mediumC = planned.mediumC();
        row.recordedAt = planned.recordedAt();
        setpoints.persist(row);
    }

    private static PlannedSetpoint setpoint(HouseSetpointRow row) {
        return new PlannedSetpoint(row.house, row.fromAt, row.mediumC, row.recordedAt);
    }
}
