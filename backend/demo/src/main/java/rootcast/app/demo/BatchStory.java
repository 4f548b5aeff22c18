package rootcast.app.demo;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.jspecify.annotations.Nullable;
import rootcast.crop.CropProfile;
import rootcast.crop.Stage;
import rootcast.crop.StageProfile;
import rootcast.crop.TrayFormat;
import rootcast.ledger.Cause;
import rootcast.ledger.OrderLine;
import rootcast.ledger.Sample;
import rootcast.ledger.What;

/**
 * Turns one planned batch into what people recorded of it: it grows in the simulated medium, plants die, growers look
 * in, count, carry it to a toning house and ship it, all up to the demo's start and not beyond.
 */
final class BatchStory {

    /** Of the plants that die in a stage so many are seen and entered at two looks; a count finds the rest. */
    private static final double FIRST_LOOK_SHARE = 0.35;

    private static final double SECOND_LOOK_SHARE = 0.35;

    /** Share of a stage's days after which growers begin to look for its end. */
    private static final double LOOKS_FROM = 0.8;

    private static final int CELLS_LOOKED_AT = 30;

    /** The most of the cells looked at that is less than nine in ten. */
    private static final int MOST_INCOMPLETE = 26;

    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
    private static final double Z_COMPLETE = NORMAL.inverseCumulativeProbability(0.9);

    private final BatchPlan plan;
    private final DemoSetup.Place site;
    private final CropProfile profile;
    private final List<PlannedShipment> planned;
    private final SplittableRandom random;
    private final WorkingHours hours;
    private final TrueGrowth growth;
    private final TrueLosses losses;
    private final DemoBatch batch;
    private final Diary diary;
    private final Instant now;
    private @Nullable Instant movedAt;

    /** Trays that leave for an order on a day. */
    record PlannedShipment(LocalDate on, int trays, OrderLine orderLine) {}

    /** The batch and its entries, in the order they were recorded. */
    record Told(DemoBatch batch, List<DemoEntry> entries) {}

    /**
     * @param planned shipments for orders; a batch without any ships what it has once it is ready
     * @param random  of this batch alone
     * @param now     the demo's start
     */
    BatchStory(
            BatchPlan plan,
            DemoSetup.Place site,
            TrayFormat format,
            CropProfile profile,
            MediumHistory medium,
            List<PlannedShipment> planned,
            SplittableRandom random,
            Instant now) {
        this.plan = plan;
        this.site = site;
        this.profile = profile;
        this.planned = planned;
        this.random = random;
        this.now = now;
        hours = new WorkingHours(site.timeZone());
        batch = stick(format, now);
        double rateFactor = plan.story().rateFactor() * Math.exp(profile.rateSpread() * random.nextGaussian());
        growth = new TrueGrowth(medium, rateFactor);
        losses = TrueLosses.draw(profile, plan.story(), batch.plants(), random);
        diary = new Diary(batch, hours, random, now);
    }

    private DemoBatch stick(TrayFormat format, Instant now) {
        LocalDate day = WorkingHours.workdayNotAfter(hours.dayOf(now).minusDays(plan.daysAgo()));
        Instant stuckAt = hours.at(day, LocalTime.of(8, 0).plusMinutes(5L * random.nextInt(72)));
        boolean lastTrayPart = random.nextInt(4) == 0;
        int plants = plan.trays() * format.cells() - (lastTrayPart ? random.nextInt(format.cells() / 2) : 0);
        Instant recordedAt = stuckAt.plusSeconds(120 + random.nextInt(900));
        return new DemoBatch(
                plan.key(),
                site.code(),
                plan.house(),
                plan.variety(),
                format,
                stuckAt,
                plan.trays(),
                plants,
                recordedAt,
                site.code() + " sticking line");
    }

    Told tell() {
        Optional<Instant> stageFrom = Optional.of(batch.stuckAt());
        int alive = batch.plants();
        for (StageProfile stage : profile.stages()) {
            if (stageFrom.isPresent()) {
                stageFrom = live(stage, stageFrom.get(), alive);
                alive -= losses.in(stage.stage());
            }
        }
        if (stageFrom.isPresent()) {
            countAndShip(stageFrom.get(), alive);
        }
        return new Told(batch, diary.inOrderRecorded());
    }

    /**
     * One stage: a look half-way, perhaps a sampled count, a look once it is passed.
     *
     * @return when it was passed; empty if that was not recorded before the demo starts
     */
    private Optional<Instant> live(StageProfile stage, Instant from, int aliveAtStart) {
        int dead = losses.in(stage.stage());
        Optional<Instant> halfway = growth.reaches(stage, from, 0.5, this::houseAt);
        if (halfway.isEmpty()) {
            return Optional.empty();
        }
        Instant firstLook = diary.look(halfway.get());
        boolean onPaper = plan.story() == Story.LATE_PAPER && stage.stage() == Stage.CALLUS;
        int seen = share(dead, FIRST_LOOK_SHARE);
        if (!onPaper) {
            lose(firstLook, seen, stage.stage());
        }
        boolean counted = onPaper || stage.stage() != Stage.ROOT && random.nextInt(2) == 0;
        Optional<Instant> later = growth.reaches(stage, from, 0.75, this::houseAt);
        if (counted && later.isPresent()) {
            sample(diary.look(later.get()), aliveAtStart - share(dead, 0.75));
        }
        if (onPaper && seen > 0) {
            diary.writeFromPaper(firstLook, new What.Loss(seen, causeIn(stage.stage())));
        }
        Optional<Instant> passed = growth.reaches(stage, from, 1, this::houseAt);
        growth.reaches(stage, from, LOOKS_FROM, this::houseAt).ifPresent(due -> lookDaily(stage, from, due, passed));
        return passed.isEmpty() ? passed : pass(stage.stage(), passed.get(), share(dead, SECOND_LOOK_SHARE));
    }

    /** On each working day, cells are turned out of their trays until nine in ten have come so far. */
    private void lookDaily(StageProfile stage, Instant from, Instant due, Optional<Instant> passed) {
        Instant at = diary.look(due);
        while (at.isBefore(now) && passed.map(at::isBefore).orElse(true)) {
            double z = Math.log(growth.done(stage, from, at, this::houseAt)) / profile.cellSpread() + Z_COMPLETE;
            double share = NORMAL.cumulativeProbability(z);
            int reached = 0;
            for (int cell = 0; cell < CELLS_LOOKED_AT; cell++) {
                reached += random.nextDouble() < share ? 1 : 0;
            }
            Stage next = Stage.values()[stage.stage().ordinal() + 1];
            // All of a few cells may have come before nine in ten of all have; the grower calls that "not quite".
            diary.write(at, new What.Look(next, CELLS_LOOKED_AT, Math.min(reached, MOST_INCOMPLETE)), null);
            at = diary.look(hours.at(hours.dayOf(at).plusDays(1), WorkingHours.START));
        }
    }

    private Optional<Instant> pass(Stage stage, Instant passedAt, int seenDead) {
        Instant look = diary.look(passedAt);
        Stage reached = Stage.values()[stage.ordinal() + 1];
        if (diary.write(look, new What.StageReached(reached), null).isEmpty()) {
            return Optional.empty();
        }
        lose(diary.look(look), seenDead, stage);
        if (reached == Stage.ROOT && !plan.toningHouse().isEmpty()) {
            Instant carriedAt = diary.look(look.plus(Duration.ofHours(20L * random.nextInt(3))));
            if (diary.write(carriedAt, new What.Move(plan.toningHouse()), null).isPresent()) {
                movedAt = carriedAt;
            }
        }
        return Optional.of(passedAt);
    }

    private void lose(Instant at, int plants, Stage stage) {
        if (plants < 1) {
            return;
        }
        Cause cause = causeIn(stage);
        boolean mistyped = plan.story() == Story.TYPING_ERROR && stage == Stage.CALLUS && plants < batch.plants() / 20;
        if (mistyped) {
            diary.write(at, new What.Loss(plants * 10, cause), null).ifPresent(mistake -> {
                String reason = "typed %d for %d".formatted(plants * 10, plants);
                diary.write(mistake.recordedAt().plusSeconds(300), new What.Reversal(mistake.id(), reason), null);
                diary.write(at, new What.Loss(plants, cause), null);
            });
        } else {
            diary.write(at, new What.Loss(plants, cause), null);
        }
    }

    private void sample(Instant at, int alive) {
        int trays = Math.max(2, plan.trays() / 6);
        int cells = trays * batch.trayFormat().cells();
        if (cells > batch.plants()) {
            return;
        }
        double blankShare = 1 - (double) alive / batch.plants();
        int blanks = 0;
        for (int cell = 0; cell < cells; cell++) {
            if (random.nextDouble() < blankShare) {
                blanks++;
            }
        }
        diary.write(at, new What.SampledCount(new Sample(trays, cells, blanks)), null);
    }

    private void countAndShip(Instant readyAt, int alive) {
        Instant countedAt = diary.look(readyAt.plus(Duration.ofHours(2)));
        if (diary.write(countedAt, new What.Count(alive), null).isEmpty()) {
            return;
        }
        if (planned.isEmpty()) {
            shipAll(countedAt, alive);
        } else {
            shipForOrders(countedAt, alive);
        }
    }

    private void shipForOrders(Instant countedAt, int alive) {
        int left = alive / batch.trayFormat().saleCount();
        for (PlannedShipment shipment : planned) {
            Instant at = hours.at(shipment.on(), WorkingHours.START.plusMinutes(random.nextInt(120)));
            if (shipment.trays() <= left && at.isAfter(countedAt)) {
                ship(at, shipment.trays(), shipment.orderLine());
                left -= shipment.trays();
            }
        }
    }

    /** In one to three shipments a few days apart; what does not fill a tray is thrown out. */
    private void shipAll(Instant countedAt, int alive) {
        int saleable = alive / batch.trayFormat().saleCount();
        int shipments = 1 + random.nextInt(Math.min(3, Math.max(1, saleable)));
        int left = saleable;
        Instant last = countedAt;
        for (int i = shipments; i > 0 && left > 0; i--) {
            int trays = i == 1 ? left : Math.max(1, left / i);
            LocalDate day = WorkingHours.workdayNotBefore(hours.dayOf(last).plusDays(1L + random.nextInt(4)));
            last = hours.at(day, WorkingHours.START.plusMinutes(random.nextInt(120)));
            if (!ship(last, trays, null)) {
                return;
            }
            left -= trays;
        }
        int rest = alive - saleable * batch.trayFormat().saleCount();
        if (rest > 0) {
            diary.write(diary.look(last), new What.Loss(rest, Cause.OTHER), "less than a tray left after shipping");
        }
    }

    private boolean ship(Instant at, int trays, @Nullable OrderLine orderLine) {
        int plants = trays * batch.trayFormat().saleCount();
        return diary.write(at, new What.Ship(trays, plants, orderLine), null).isPresent();
    }

    private String houseAt(Instant at) {
        return movedAt != null && !at.isBefore(movedAt) ? plan.toningHouse() : plan.house();
    }

    private Cause causeIn(Stage stage) {
        if (plan.story().strikes(stage)) {
            return plan.story().cause();
        }
        List<Cause> usual = switch (stage) {
            case STICK -> List.of(Cause.ROT, Cause.BOTRYTIS, Cause.DRY_DOWN, Cause.DAMPING_OFF);
            case CALLUS -> List.of(Cause.NO_ROOT, Cause.ROT, Cause.BOTRYTIS);
            default -> List.of(Cause.NO_ROOT, Cause.PEST, Cause.DAMAGE, Cause.DRY_DOWN);
        };
        return usual.get(random.nextInt(usual.size()));
    }

    private static int share(int plants, double part) {
        return (int) Math.round(plants * part);
    }
}
