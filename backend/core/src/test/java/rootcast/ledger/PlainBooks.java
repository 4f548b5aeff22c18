package rootcast.ledger;

import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rootcast.crop.Stage;
import rootcast.crop.TrayFormat;

/**
 * The reference that the ledger is held against: a batch as counters, worked through minute by minute from the start
 * each time, facts of a minute in the order they came in. Slow, plain, and without the fold's code. It borrows only the
 * words {@link What} and {@link Refusal}.
 */
final class PlainBooks {

    static final int MINUTES = 40;
    static final Instant START = Instant.parse("2026-02-02T00:00:00Z");

    record Fact(UUID id, int minute, What what) {}

    /** The batch at the end of a minute. */
    static final class Bench {
        boolean stuck;
        int in;
        int alive;
        int shipped;
        int traysStuck;
        int traysShipped;
        String house = "";
        Stage seen = Stage.STICK;
        final Map<Cause, Integer> lost = new EnumMap<>(Cause.class);
        final Map<OrderLine, Integer> shippedTo = new HashMap<>();
        final List<What.Look> looks = new ArrayList<>();

        int lostPlants() {
            int sum = 0;
            for (int plants : lost.values()) {
                sum += plants;
            }
            return sum;
        }

        Stage stage() {
            return shipped > 0 && alive == 0 ? Stage.SHIP : seen;
        }

        int traysHere() {
            return traysShipped > traysStuck ? 0 : traysStuck - traysShipped;
        }

        Bench copy() {
            Bench copy = new Bench();
            copy.stuck = stuck;
            copy.in = in;
            copy.alive = alive;
            copy.shipped = shipped;
            copy.traysStuck = traysStuck;
            copy.traysShipped = traysShipped;
            copy.house = house;
            copy.seen = seen;
            copy.lost.putAll(lost);
            copy.shippedTo.putAll(shippedTo);
            copy.looks.addAll(looks);
            return copy;
        }
    }

    private final TrayFormat format;
    private final int stuckMinute;
    private final List<Fact> facts = new ArrayList<>();
    private List<Bench> minutes = new ArrayList<>();

    PlainBooks(TrayFormat format, int stuckMinute) {
        this.format = format;
        this.stuckMinute = stuckMinute;
        replay(facts, null);
    }

    static Instant instant(int minute) {
        return START.plusSeconds(60L * minute);
    }

    List<Fact> facts() {
        return facts;
    }

    /** The batch at the end of each minute, from minute 0 on. */
    List<Bench> minutes() {
        return minutes;
    }

    Bench at(int minute) {
        return minutes.get(Math.max(0, Math.min(minute, MINUTES - 1)));
    }

    Bench last() {
        return at(MINUTES - 1);
    }

    /** Takes the fact in, or says why not and stays as it was. */
    Optional<Refusal> add(Fact fact, int now) {
        if (fact.minute > now + 2) {
            return Optional.of(new Refusal.InTheFuture(instant(fact.minute), instant(now)));
        }
        Refusal refusal = fact.what instanceof What.Reversal reversal ? whyNotReversed(reversal.entry()) : null;
        if (refusal == null) {
            List<Fact> more = new ArrayList<>(facts);
            more.add(fact);
            refusal = replay(more, fact);
        }
        if (refusal == null) {
            facts.add(fact);
        }
        return Optional.ofNullable(refusal);
    }

    private @Nullable Refusal whyNotReversed(UUID id) {
        Refusal refusal = new Refusal.NoSuchEntry(id);
        for (Fact fact : facts) {
            if (fact.id.equals(id)) {
                boolean never = fact.what instanceof What.Reversal;
                refusal = never ? new Refusal.CannotBeReversed(id, fact.what.kind()) : null;
            }
        }
        for (Fact fact : facts) {
            if (fact.what instanceof What.Reversal earlier && earlier.entry().equals(id)) {
                refusal = new Refusal.AlreadyReversed(id, fact.id);
            }
        }
        return refusal;
    }

    private @Nullable Refusal replay(List<Fact> all, @Nullable Fact added) {
        List<Bench> course = new ArrayList<>();
        Bench bench = new Bench();
        for (int minute = -1; minute < MINUTES; minute++) {
            for (Fact fact : all) {
                if (Math.max(-1, fact.minute) != minute || !counts(fact, all)) {
                    continue;
                }
                Refusal no = whyNot(bench, fact);
                if (no != null) {
                    return fact == added
                            ? no
                            : new Refusal.ContradictsLater(fact.id, fact.what.kind(), instant(fact.minute), no);
                }
                apply(bench, fact.what);
            }
            if (minute >= 0) {
                course.add(bench.copy());
            }
        }
        minutes = course;
        return null;
    }

    private static boolean counts(Fact fact, List<Fact> all) {
        if (fact.what instanceof What.Reversal) {
            return false;
        }
        for (Fact other : all) {
            if (other.what instanceof What.Reversal reversal && reversal.entry().equals(fact.id)) {
                return false;
            }
        }
        return true;
    }

    private @Nullable Refusal whyNot(Bench bench, Fact fact) {
        if (fact.what instanceof What.Stick stick) {
            int cells = stick.trays() * format.cells();
            return stick.trays() < 1 || stick.trays() > 20_000
                    ? new Refusal.OutOfRange("trays", stick.trays(), 1, 20_000)
                    : outside("plants", stick.plants(), 1, cells);
        }
        if (!bench.stuck) {
            return new Refusal.BeforeSticking(instant(fact.minute), instant(stuckMinute));
        }
        return switch (fact.what.kind()) {
            case "loss" -> whyNot(bench, (What.Loss) fact.what);
            case "stage" -> whyNot(bench, (What.StageReached) fact.what);
            case "ship" -> whyNot(bench, (What.Ship) fact.what);
            case "look" -> whyNot(bench, (What.Look) fact.what);
            case "move" -> {
                String to = ((What.Move) fact.what).house();
                yield to.equals(bench.house) ? new Refusal.AlreadyInHouse(to) : null;
            }
            default ->
                fact.what instanceof What.Count count
                        ? whyNot(bench, count)
                        : whyNot(bench, ((What.SampledCount) fact.what).sample());
        };
    }

    private static @Nullable Refusal whyNot(Bench bench, What.Loss loss) {
        return loss.plants() > bench.alive
                ? new Refusal.MoreThanAlive(loss.plants(), bench.alive)
                : outside("plants", loss.plants(), 1, bench.alive);
    }

    private static @Nullable Refusal whyNot(Bench bench, What.Count count) {
        int most = bench.in - bench.shipped;
        return count.plants() > most
                ? new Refusal.MoreThanStuck(count.plants(), most)
                : outside("plants", count.plants(), 0, most);
    }

    private @Nullable Refusal whyNot(Bench bench, Sample sample) {
        boolean some = sample.trays() > 0 && sample.cells() > 0;
        boolean here = sample.trays() <= bench.traysHere()
                && sample.cells() <= sample.trays() * format.cells()
                && sample.cells() <= places(bench);
        return some && here
                ? outside("blanks", sample.blanks(), 0, sample.cells())
                : new Refusal.SampleBeyondBatch(sample, bench.traysHere(), format.cells());
    }

    private int places(Bench bench) {
        int cells = bench.traysHere() * format.cells();
        int plants = bench.in - bench.shipped;
        return cells < plants ? cells : plants;
    }

    private @Nullable Refusal whyNot(Bench bench, What.Look look) {
        Refusal cells = outside("cells", look.cells(), 1, places(bench));
        return cells != null ? cells : outside("reached", look.reached(), 0, look.cells());
    }

    private static @Nullable Refusal whyNot(Bench bench, What.StageReached reached) {
        boolean growing = reached.stage() != Stage.SHIP;
        return growing && reached.stage().ordinal() > bench.stage().ordinal()
                ? null
                : new Refusal.StageGoesBack(reached.stage(), bench.stage());
    }

    private @Nullable Refusal whyNot(Bench bench, What.Ship ship) {
        if (bench.stage() == Stage.STICK || bench.stage() == Stage.CALLUS) {
            return new Refusal.ShipBeforeRooted(bench.stage());
        }
        int saleable = bench.alive / format.saleCount();
        if (ship.trays() < 1) {
            return new Refusal.OutOfRange("trays", ship.trays(), 1, saleable);
        }
        if (ship.trays() > saleable) {
            return new Refusal.MoreThanSaleable(ship.trays(), saleable, bench.alive, format.saleCount());
        }
        int least = ship.trays() * format.saleCount();
        int most = ship.trays() * format.cells();
        if (outside("plants", ship.plants(), least, most) != null) {
            return new Refusal.PlantsDoNotFitTrays(ship.plants(), ship.trays(), least, most);
        }
        return ship.plants() > bench.alive ? new Refusal.MoreThanAlive(ship.plants(), bench.alive) : null;
    }

    private static @Nullable Refusal outside(String field, int asked, int least, int most) {
        return asked < least || asked > most ? new Refusal.OutOfRange(field, asked, least, most) : null;
    }

    private void apply(Bench bench, What what) {
        if (what instanceof What.Stick stick) {
            bench.stuck = true;
            bench.in = stick.plants();
            bench.alive = stick.plants();
            bench.traysStuck = stick.trays();
            bench.house = stick.house();
        } else if (what instanceof What.Loss loss) {
            bench.alive -= loss.plants();
            lose(bench, loss.cause(), loss.plants());
        } else if (what instanceof What.Count count) {
            lose(bench, Cause.COUNT_DIFFERENCE, bench.alive - count.plants());
            bench.alive = count.plants();
        } else if (what instanceof What.SampledCount count) {
            int found = nearest(
                    (long) places(bench)
                            * (count.sample().cells() - count.sample().blanks()),
                    count.sample().cells());
            lose(bench, Cause.COUNT_DIFFERENCE, bench.alive - found);
            bench.alive = found;
        } else if (what instanceof What.StageReached reached) {
            bench.seen = reached.stage();
        } else if (what instanceof What.Look look) {
            bench.looks.add(look);
        } else if (what instanceof What.Move move) {
            bench.house = move.house();
        } else if (what instanceof What.Ship ship) {
            bench.alive -= ship.plants();
            bench.shipped += ship.plants();
            bench.traysShipped += ship.trays();
            if (ship.orderLine() != null) {
                bench.shippedTo.merge(ship.orderLine(), ship.trays(), Integer::sum);
            }
        }
    }

    private static void lose(Bench bench, Cause cause, int plants) {
        bench.lost.merge(cause, plants, Integer::sum);
        bench.lost.remove(cause, 0);
    }

    /** The whole number nearest to a fraction, halves up, in whole numbers only. */
    private static int nearest(long numerator, long denominator) {
        return (int) ((2 * numerator + denominator) / (2 * denominator));
    }
}
