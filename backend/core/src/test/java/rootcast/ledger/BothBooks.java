package rootcast.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.UUID;
import java.util.function.Supplier;
import rootcast.crop.TrayFormat;
import rootcast.facts.FactPosition;
import rootcast.ledger.EntryRules.Decision;
import rootcast.ledger.PlainBooks.Bench;
import rootcast.ledger.PlainBooks.Fact;

/** One batch in the ledger's books and in the plain ones. */
final class BothBooks {

    final Batch batch;
    final PlainBooks plain;
    final List<Entry> entries = new ArrayList<>();
    final List<Map<Account, Long>> posted = new ArrayList<>();
    BatchFold books;

    BothBooks(String id, String site, TrayFormat format, int stuckMinute) {
        batch = new Batch(id, site, "lav-blue", format, PlainBooks.instant(stuckMinute));
        plain = new PlainBooks(format, stuckMinute);
        for (int minute = 0; minute < PlainBooks.MINUTES; minute++) {
            posted.add(new HashMap<>());
        }
    }

    Decision put(Fact fact, int now, long position, Random listing) {
        var entry = new Entry(
                fact.id(),
                new FactPosition(position),
                batch.id(),
                PlainBooks.instant(fact.minute()),
                PlainBooks.instant(now),
                "ada",
                fact.what(),
                null);
        List<Entry> anyOrder = new ArrayList<>(entries);
        Collections.shuffle(anyOrder, listing);
        Decision decision = EntryRules.decide(batch, List.copyOf(anyOrder), entry, PlainBooks.instant(now));
        if (decision instanceof Decision.Accepted accepted) {
            entries.add(entry);
            books = accepted.books();
            accepted.postings().forEach(this::post);
        }
        return decision;
    }

    private void post(Posting posting) {
        long seconds = posting.effectiveAt().getEpochSecond() - PlainBooks.START.getEpochSecond();
        posted.get(Math.toIntExact(seconds / 60)).merge(posting.account(), posting.plants(), Long::sum);
    }

    /** What all postings ever written add up to by the end of each minute. */
    List<Map<Account, Long>> postedUpToEachMinute() {
        List<Map<Account, Long>> sums = new ArrayList<>();
        Map<Account, Long> sum = new HashMap<>();
        for (Map<Account, Long> minute : posted) {
            minute.forEach((account, plants) -> sum.merge(account, plants, Long::sum));
            sum.values().removeIf(plants -> plants == 0);
            sums.add(new HashMap<>(sum));
        }
        return sums;
    }

    /** A batch with random facts that were all accepted, written down at the end in no order of time. */
    static BothBooks filled(RandomFacts facts, String id, String site, int tries, boolean distinctInstants) {
        TrayFormat format = facts.format();
        Set<Integer> taken = new HashSet<>();
        int stuckMinute = facts.upTo(3);
        taken.add(stuckMinute);
        BothBooks both = new BothBooks(id, site, format, stuckMinute);
        for (int position = 1; position <= tries || both.entries.isEmpty(); position++) {
            boolean stuck = !both.entries.isEmpty();
            int minute = stuck ? facts.upTo(PlainBooks.MINUTES - 1) : stuckMinute;
            if (stuck && distinctInstants && !taken.add(minute)) {
                continue;
            }
            What what = stuck ? facts.next(both.plain, format, minute) : facts.stick(format);
            var fact = new Fact(new UUID(id.hashCode(), position), minute, what);
            if (both.plain.add(fact, PlainBooks.MINUTES).isEmpty()) {
                assertThat(both.put(fact, PlainBooks.MINUTES, position, facts.random()))
                        .isInstanceOf(Decision.Accepted.class);
            }
        }
        return both;
    }

    /** The same batch before anything was written. */
    BothBooks empty() {
        return new BothBooks(
                batch.id(),
                batch.site(),
                batch.trayFormat(),
                plain.facts().get(0).minute());
    }

    /** Whether all were accepted in this order. */
    boolean takeAll(List<Fact> arrivals, Random listing) {
        for (int i = 0; i < arrivals.size(); i++) {
            if (put(arrivals.get(i), PlainBooks.MINUTES, i + 1, listing) instanceof Decision.Refused) {
                return false;
            }
        }
        return true;
    }

    List<Map<Account, Long>> plainBalancesAtEachMinute() {
        return plain.minutes().stream().map(BothBooks::balances).toList();
    }

    private static Map<Account, Long> balances(Bench bench) {
        Map<Account, Long> balances = new HashMap<>();
        balances.put(Account.SUPPLIER, -(long) bench.in);
        balances.put(Account.aliveIn(bench.house), (long) bench.alive);
        balances.put(Account.SHIPPED, (long) bench.shipped);
        bench.lost.forEach((cause, plants) -> balances.put(Account.lostTo(cause), (long) plants));
        balances.values().removeIf(plants -> plants == 0);
        return balances;
    }

    static void shouldSumToZeroAtEveryInstant(List<Posting> postings, Supplier<String> as) {
        Map<Object, Long> sums = new HashMap<>();
        postings.forEach(posting -> sums.merge(posting.effectiveAt(), posting.plants(), Long::sum));
        assertThat(sums.values()).as(as).allMatch(sum -> sum == 0);
    }

    static void shouldStandAlike(BatchState state, Bench bench, Supplier<String> as) {
        assertThat(state.stuckPlants()).as(as).isEqualTo(bench.in);
        assertThat(state.alivePlants()).as(as).isEqualTo(bench.alive);
        assertThat(state.lost()).as(as).isEqualTo(bench.lost);
        assertThat(state.shippedPlants()).as(as).isEqualTo(bench.shipped);
        assertThat(state.stage()).as(as).isEqualTo(bench.stage());
        assertThat(state.looks().stream().map(look -> new What.Look(look.stage(), look.cells(), look.reached())))
                .as(as)
                .containsExactlyElementsOf(bench.looks);
        assertThat(state.isStuck() ? state.house() : "").as(as).isEqualTo(bench.house);
        assertThat(state.benchTrays()).as(as).isEqualTo(bench.traysHere());
        assertThat(state.shippedTrays()).as(as).isEqualTo(bench.traysShipped);
        assertThat(state.shippedTo()).as(as).isEqualTo(bench.shippedTo);
        assertThat(bench.in).as(as).isEqualTo(bench.alive + bench.lostPlants() + bench.shipped);
        assertThat(state.balances()).as(as).isEqualTo(balances(bench));
    }
}
