package rootcast.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import rootcast.crop.TrayFormat;
import rootcast.ledger.EntryRules.Decision;
import rootcast.ledger.PlainBooks.Fact;

/** Random operations, valid and invalid, on time and late, against the {@link PlainBooks}. */
class LedgerAgainstPlainBooksTest {

    private static final int SEQUENCES = 10_000;

    @Test
    void everyOperationEndsAsInThePlainBooksAndThePostingsAddUpAtEveryInstant() {
        long seed = 20260202;
        var facts = new RandomFacts(seed);
        Map<String, Integer> outcomes = new HashMap<>();
        for (int run = 0; run < SEQUENCES; run++) {
            TrayFormat format = facts.format();
            int now = facts.upTo(3);
            BothBooks both = new BothBooks("B1", "north", format, now);
            int operations = 5 + facts.upTo(16);
            for (int position = 1; position <= operations; position++) {
                boolean stuck = !both.entries.isEmpty();
                int minute = stuck ? facts.happened(now) : now;
                What what = stuck ? facts.next(both.plain, format, minute) : facts.stick(format);
                var fact = new Fact(new UUID(run, position), minute, what);
                String in = "seed %d run %d".formatted(seed, run);
                Supplier<String> as = () -> "%s: %s among %s".formatted(in, fact, both.plain.facts());

                Optional<Refusal> refusal = both.plain.add(fact, now);
                Decision decision = both.put(fact, now, position, facts.random());

                if (refusal.isPresent()) {
                    assertThat(decision).as(as).isEqualTo(new Decision.Refused(refusal.get()));
                } else {
                    assertThat(decision).as(as).isInstanceOf(Decision.Accepted.class);
                    BothBooks.shouldSumToZeroAtEveryInstant(((Decision.Accepted) decision).postings(), as);
                    BothBooks.shouldStandAlike(both.books.state(), both.plain.last(), as);
                    assertThat(both.postedUpToEachMinute()).as(as).isEqualTo(both.plainBalancesAtEachMinute());
                }
                outcomes.merge(outcome(what, refusal, minute < now), 1, Integer::sum);
                now = stuck ? Math.min(now + facts.upTo(3), PlainBooks.MINUTES - 4) : now;
            }
        }
        shouldHaveBeenTried(outcomes);
    }

    private static String outcome(What what, Optional<Refusal> refusal, boolean late) {
        return refusal.map(because -> because.getClass().getSimpleName())
                .orElse((late ? "late " : "") + what.getClass().getSimpleName());
    }

    /** A property over cases that never occur says nothing. */
    private static void shouldHaveBeenTried(Map<String, Integer> outcomes) {
        List<String> wanted = new ArrayList<>();
        for (Class<?> refusal : Refusal.class.getPermittedSubclasses()) {
            wanted.add(refusal.getSimpleName());
        }
        for (Class<?> what : What.class.getPermittedSubclasses()) {
            wanted.add(what.getSimpleName());
            if (what != What.Stick.class) {
                wanted.add("late " + what.getSimpleName());
            }
        }
        assertThat(wanted)
                .allSatisfy(outcome -> assertThat(outcomes.getOrDefault(outcome, 0))
                        .as("%s among %s", outcome, outcomes)
                        .isGreaterThan(100));
    }

    /** A reversal is known at every instant, whenever it was written: the reversed entry counts as never made. */
    @Test
    void theBatchAsOfAnInstantIsWhatTheEntriesUpToItAddUpTo() {
        var facts = new RandomFacts(4711);
        for (int run = 0; run < 1_000; run++) {
            BothBooks both = BothBooks.filled(facts, "B1", "north", 12, false);
            for (int minute = 0; minute < PlainBooks.MINUTES; minute++) {
                int until = minute;
                List<Entry> upToThen = both.entries.stream()
                        .filter(entry -> entry.what() instanceof What.Reversal
                                || !entry.happenedAt().isAfter(PlainBooks.instant(until)))
                        .toList();
                Optional<BatchState> then = both.books.stateAt(PlainBooks.instant(minute));
                String in = "seed 4711 run %d minute %d".formatted(run, minute);
                Supplier<String> as = () -> in + ": " + both.plain.facts();

                assertThat(then.isPresent()).as(as).isEqualTo(both.plain.at(minute).stuck);
                then.ifPresent(state -> {
                    assertThat(state)
                            .as(as)
                            .isEqualTo(BatchFold.of(both.batch, upToThen).state());
                    BothBooks.shouldStandAlike(state, both.plain.at(until), as);
                });
            }
        }
    }

    @Test
    void anyOrderOfArrivalThatIsAcceptedGivesTheSameBooks() {
        var facts = new RandomFacts(99);
        int otherOrders = 0;
        for (int run = 0; run < 3_000; run++) {
            BothBooks first = BothBooks.filled(facts, "B1", "north", 9, true);
            List<Fact> asWritten = first.plain.facts();
            List<Fact> arrivals = new ArrayList<>(asWritten);
            for (int shuffle = 0; shuffle < 6; shuffle++) {
                Collections.shuffle(arrivals.subList(1, arrivals.size()), facts.random());
                BothBooks other = first.empty();
                if (!arrivals.equals(asWritten) && other.takeAll(arrivals, facts.random())) {
                    String as = "seed 99 run %d: %s, not %s".formatted(run, arrivals, asWritten);
                    assertThat(other.books.state()).as(as).isEqualTo(first.books.state());
                    assertThat(other.postedUpToEachMinute()).as(as).isEqualTo(first.postedUpToEachMinute());
                    otherOrders++;
                }
            }
        }
        assertThat(otherOrders).isGreaterThan(3_000);
    }

    @Test
    void everySiteAndTheWholeBusinessAddUpAtEveryInstant() {
        var facts = new RandomFacts(12);
        for (int run = 0; run < 500; run++) {
            List<BothBooks> north = List.of(filled(facts, "N1", "north"), filled(facts, "N2", "north"));
            List<BothBooks> south = List.of(filled(facts, "S1", "south"));
            List<BothBooks> everywhere = List.of(north.get(0), north.get(1), south.get(0));
            for (List<BothBooks> place : List.of(north, south, everywhere)) {
                assertThat(postedByKind(place))
                        .as("seed 12 run %d, %d batches", run, place.size())
                        .isEqualTo(plainByKind(place));
            }
        }
    }

    private static BothBooks filled(RandomFacts facts, String id, String site) {
        return BothBooks.filled(facts, id, site, 8, false);
    }

    private static List<List<Long>> postedByKind(List<BothBooks> batches) {
        List<long[]> sums = perMinute();
        for (BothBooks both : batches) {
            List<Map<Account, Long>> posted = both.postedUpToEachMinute();
            for (int minute = 0; minute < PlainBooks.MINUTES; minute++) {
                long[] sum = sums.get(minute);
                posted.get(minute)
                        .forEach((account, plants) -> sum[account.kind().ordinal()] += plants);
            }
        }
        return lists(sums);
    }

    /** In the order of the kinds: supplier, alive, lost, shipped. */
    private static List<List<Long>> plainByKind(List<BothBooks> batches) {
        List<long[]> sums = perMinute();
        for (int minute = 0; minute < PlainBooks.MINUTES; minute++) {
            for (BothBooks both : batches) {
                PlainBooks.Bench bench = both.plain.at(minute);
                sums.get(minute)[0] -= bench.in;
                sums.get(minute)[1] += bench.alive;
                sums.get(minute)[2] += bench.lostPlants();
                sums.get(minute)[3] += bench.shipped;
            }
            long[] sum = sums.get(minute);
            assertThat(sum[1] + sum[2] + sum[3]).as("alive + lost + shipped").isEqualTo(-sum[0]);
        }
        return lists(sums);
    }

    private static List<long[]> perMinute() {
        return Stream.generate(() -> new long[4]).limit(PlainBooks.MINUTES).toList();
    }

    private static List<List<Long>> lists(List<long[]> sums) {
        return sums.stream().map(sum -> Arrays.stream(sum).boxed().toList()).toList();
    }
}
