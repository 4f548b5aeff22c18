package rootcast.app.rounds.store;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** In which order people walk through houses. */
@ApplicationScoped
@Transactional
public class WalkingOrder {

    @Inject
    Rows rows;

    @ApplicationScoped
    static class Rows implements PanacheRepositoryBase<WalkingOrderRow, String> {}

    /** Houses that nobody has placed come last, by their code. */
    public List<String> inOrder(Collection<String> houses) {
        Map<String, Integer> places =
                rows.listAll().stream().collect(Collectors.toMap(row -> row.house, row -> row.placeNo));
        return houses.stream()
                .sorted(Comparator.comparing((String house) -> places.getOrDefault(house, Integer.MAX_VALUE))
                        .thenComparing(Comparator.naturalOrder()))
                .toList();
    }

    /** Places these and forgets the places of the others among {@code all}. */
    public void place(List<String> inOrder, Collection<String> all) {
        for (String house : all) {
            rows.deleteById(house);
        }
        rows.flush();
        for (int place = 0; place < inOrder.size(); place++) {
            WalkingOrderRow row = new WalkingOrderRow();
            row.house = inOrder.get(place);
            row.placeNo = place + 1;
            rows.persist(row);
        }
    }
}
