package rootcast.app.rounds.rest;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rootcast.app.crop.LiveCatalogue;
import rootcast.app.ledger.RecordedBatch;
import rootcast.app.ledger.store.PanacheLedger;
import rootcast.app.rounds.Cared;
import rootcast.app.rounds.RecordedCare;
import rootcast.app.rounds.SiteCare;
import rootcast.app.rounds.store.RoundCares;
import rootcast.app.site.store.Places;
import rootcast.crop.Band;
import rootcast.crop.MistRegime;
import rootcast.crop.RecipeClash;
import rootcast.crop.RecipeQuantity;
import rootcast.ledger.Entry;
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

    @Inject
    RoundCares cares;

    @Inject
    PanacheLedger ledger;

    List<RoundItemView> items(SiteCare.At at, List<RoundItem> items) {
        Map<String, String> houseNames = houseNames();
        Map<String, Cared> batches = new HashMap<>();
        at.byHouse()
                .values()
                .forEach(all -> all.forEach(
                        cared -> batches.put(cared.snapshot().batch().id(), cared)));
        Map<String, AnswerView> answers = answers(items);
        return items.stream()
                .map(item -> view(
                        at,
                        item,
                        houseNames,
                        item.batch() == null ? null : batches.get(item.batch()),
                        answers.get(item.id())))
                .toList();
    }

    private Map<String, AnswerView> answers(List<RoundItem> items) {
        Collection<RecordedCare> closed = cares.ofItems(items.stream()
                        .filter(RoundViews::isClosed)
                        .map(RoundItem::id)
                        .toList())
                .values();
        Set<String> touched = closed.stream()
                .filter(care -> !care.entries().isEmpty())
                .map(care -> care.care().batch())
                .collect(Collectors.toSet());
        Map<UUID, Entry> entries = new HashMap<>();
        for (RecordedBatch batch : ledger.recorded(touched)) {
            Objects.requireNonNullElse(batch.entries(), List.<Entry>of())
                    .forEach(entry -> entries.put(entry.id(), entry));
        }
        Map<String, AnswerView> answers = new HashMap<>();
        closed.forEach(care -> answers.put(
                care.care().item(),
                AnswerView.of(
                        care,
                        care.entries().stream()
                                .map(entries::get)
                                .filter(Objects::nonNull)
                                .toList())));
        return answers;
    }

    private static boolean isClosed(RoundItem item) {
        return item.state() == RoundItem.State.DONE || item.state() == RoundItem.State.SKIPPED;
    }

    private RoundItemView view(
            SiteCare.At at,
            RoundItem item,
            Map<String, String> houseNames,
            @Nullable Cared cared,
            @Nullable AnswerView answer) {
        return new RoundItemView(
                item.id(),
                item.house(),
                houseNames.get(item.house()),
                item.batch(),
                cared == null
                        ? null
                        : names.variety(cared.snapshot().batch().variety()).name(),
                cared == null ? null : cared.snapshot().state().benchTrays(),
                cared == null ? null : cared.snapshot().state().alivePlants(),
                cared == null ? null : cared.phaseAt(at.now()).name(),
                item.task().wireName(),
                item.dueOn(),
                item.state().wireName(),
                item.why(),
                item.task().asks(),
                item.blockedBy() == null ? null : item.blockedBy().reentryAt(),
                item.blockedBy() == null ? null : item.blockedBy().product(),
                item.to(),
                answer);
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
