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
import rootcast.crop.MistRegime;
import rootcast.crop.RecipeClash;
import rootcast.crop.RecipeQuantity;
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
                .forEach(all ->
                        all.forEach(cared -> batches.put(cared.picture().batch().id(), cared)));
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
                        : names.variety(cared.picture().batch().variety()).name(),
                cared == null ? null : cared.picture().state().benchTrays(),
                cared == null ? null : cared.phaseAt(at.now()).name(),
                item.task().wireName(),
                item.dueOn(),
                item.state().wireName(),
                item.why(),
                item.task().asks(),
                item.blockedUntil(),
                item.batch() == null ? List.of() : at.fit().fits().getOrDefault(item.batch(), List.of()));
    }

    List<RoundItemView.HouseOnTheWalk> houses(SiteCare.At at) {
        Map<String, String> houseNames = houseNames();
        List<RoundItemView.HouseOnTheWalk> houses = new ArrayList<>();
        at.byHouse()
                .forEach((house, batches) -> houses.add(new RoundItemView.HouseOnTheWalk(
                        house,
                        houseNames.get(house),
                        batches.size(),
                        Treatment.closedUntil(at.treatments(), house, at.now()).orElse(null),
                        at.fit().clashes().getOrDefault(house, List.of()).stream()
                                .map(clash -> clash(at, clash))
                                .toList())));
        return houses;
    }

    private static RoundItemView.ClashView clash(SiteCare.At at, RecipeClash clash) {
        boolean isMist = clash.quantity() == RecipeQuantity.MIST;
        double middle = (clash.suits().least() + clash.suits().most()) / 2;
        return new RoundItemView.ClashView(
                clash.quantity().wireName(),
                isMist || Double.isInfinite(clash.suits().least())
                        ? null
                        : clash.suits().least(),
                isMist || Double.isInfinite(clash.suits().most())
                        ? null
                        : clash.suits().most(),
                isMist
                        ? Arrays.stream(MistRegime.values())
                                .filter(regime -> Math.abs(regime.ordinal() - middle) <= 0.5)
                                .map(MistRegime::name)
                                .toList()
                        : List.of(),
                clash.stay(),
                clash.move().stream()
                        .map(batch -> new RoundItemView.MoveView(
                                batch, at.fit().fits().getOrDefault(batch, List.of())))
                        .toList());
    }

    private Map<String, String> houseNames() {
        return places.houses().stream().collect(Collectors.toMap(House::code, House::name));
    }
}
