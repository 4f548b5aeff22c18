package rootcast.app.rounds.rest;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rootcast.app.crop.LiveCatalogue;
import rootcast.app.rounds.Cared;
import rootcast.app.rounds.SiteCare;
import rootcast.app.site.store.Places;
import rootcast.crop.Band;
import rootcast.crop.MistRegime;
import rootcast.crop.RecipeClash;
import rootcast.crop.RecipeQuantity;
import rootcast.rounds.HouseClimateFit;
import rootcast.rounds.RoundItem;
import rootcast.rounds.Treatment;
import rootcast.site.House;

/** Rounds as they are shown. */
@ApplicationScoped
class RoundViews {

    @Inject
    Places places;

    @Inject
    LiveCatalogue names;

    List<RoundItemView> items(SiteCare.At at, List<RoundItem> items) {
        Map<String, String> houseNames = houseNames();
        Map<String, Cared> batches = new HashMap<>();
        at.byHouse()
                .values()
                .forEach(all -> all.forEach(
                        cared -> batches.put(cared.snapshot().batch().id(), cared)));
        return items.stream()
                .map(item -> view(at, item, houseNames, item.batch() == null ? null : batches.get(item.batch())))
                .toList();
    }

    private RoundItemView view(SiteCare.At at, RoundItem item, Map<String, String> houseNames, @Nullable Cared cared) {
        return new RoundItemView(
                item.id(),
                item.house(),
                houseNames.get(item.house()),
                item.batch(),
                cared == null
                        ? null
                        : names.variety(cared.snapshot().batch().variety()).name(),
                cared == null ? null : cared.snapshot().state().benchTrays(),
                cared == null ? null : cared.phaseAt(at.now()).name(),
                item.task().wireName(),
                item.dueOn(),
                item.state().wireName(),
                item.why(),
                item.task().asks(),
                item.blockedBy() == null ? null : item.blockedBy().reentryAt(),
                item.blockedBy() == null ? null : item.blockedBy().product(),
                at.fit().waysOf(item.batch()).fits());
    }

    List<RoundItemView.HouseOnTheWalk> houses(SiteCare.At at) {
        Map<String, String> houseNames = houseNames();
        List<RoundItemView.HouseOnTheWalk> houses = new ArrayList<>();
        Map<String, Treatment> closed = Treatment.closedHouses(at.treatments(), at.now());
        at.byHouse()
                .forEach((house, batches) -> houses.add(new RoundItemView.HouseOnTheWalk(
                        house,
                        houseNames.get(house),
                        batches.size(),
                        closed.containsKey(house) ? closed.get(house).reentryAt() : null,
                        closed.containsKey(house) ? closed.get(house).product() : null,
                        at.fit().clashes().getOrDefault(house, List.of()).stream()
                                .map(clash -> clash(at, clash))
                                .toList())));
        return houses;
    }

    private RoundItemView.ClashView clash(SiteCare.At at, RecipeClash clash) {
        RoundItemView.SpanView suits = span(clash.quantity(), clash.suits());
        return new RoundItemView.ClashView(
                clash.quantity().wireName(),
                suits.least(),
                suits.most(),
                suits.mist(),
                clash.stay(),
                clash.move().stream()
                        .map(batch -> move(batch, cropOf(at, batch), at.fit().waysOf(batch)))
                        .toList());
    }

    private static RoundItemView.MoveView move(String batch, String crop, HouseClimateFit.Ways ways) {
        HouseClimateFit.Nearest nearest = ways.nearest();
        return new RoundItemView.MoveView(
                batch,
                crop,
                ways.fits(),
                ways.later().entrySet().stream()
                        .map(later -> new RoundItemView.LaterView(
                                later.getKey(),
                                later.getValue().reentryAt(),
                                later.getValue().product()))
                        .toList(),
                nearest == null
                        ? null
                        : new RoundItemView.NearestView(
                                nearest.house(),
                                nearest.gaps().stream()
                                        .map(gap -> new RoundItemView.GapView(
                                                gap.quantity().wireName(),
                                                span(gap.quantity(), gap.asks()),
                                                span(gap.quantity(), gap.suits())))
                                        .toList()));
    }

    private String cropOf(SiteCare.At at, String batch) {
        return at.byHouse().values().stream()
                .flatMap(List::stream)
                .filter(cared -> cared.snapshot().batch().id().equals(batch))
                .map(cared -> names.cropOf(cared.snapshot().batch().variety()).code())
                .findFirst()
                .orElseThrow();
    }

    private static RoundItemView.SpanView span(RecipeQuantity quantity, Band band) {
        if (quantity == RecipeQuantity.MIST) {
            double middle = (band.least() + band.most()) / 2;
            return new RoundItemView.SpanView(
                    null,
                    null,
                    Arrays.stream(MistRegime.values())
                            .filter(regime -> Math.abs(regime.ordinal() - middle) <= 0.5)
                            .map(MistRegime::name)
                            .toList());
        }
        return new RoundItemView.SpanView(
                Double.isInfinite(band.least()) ? null : band.least(),
                Double.isInfinite(band.most()) ? null : band.most(),
                List.of());
    }

    private Map<String, String> houseNames() {
        return places.houses().stream().collect(Collectors.toMap(House::code, House::name));
    }
}
