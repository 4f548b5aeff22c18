package rootcast.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static rootcast.ledger.OneBatch.NOW;
import static rootcast.ledger.OneBatch.entry;
import static rootcast.ledger.OneBatch.hour;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import rootcast.crop.Stage;
import rootcast.ledger.EntryRules.Decision;

/** What may not be written, each with the numbers that decide it, worked by hand against one batch's record. */
class EntryRulesTest {

    private static final UUID NOBODY_WROTE = new UUID(9, 9);

    /**
     * 980 plants stuck in 10 trays, 950 after a loss, 940 by count, 670 in 7 trays after 3 trays with 90 plants each left.
     */
    private static OneBatch record() {
        return OneBatch.ofTenTrays()
                .write(10, new What.Loss(30, Cause.ROT)) // 2
                .write(20, new What.StageReached(Stage.CALLUS)) // 3
                .write(30, new What.Count(940)) // 4
                .write(40, new What.Move("B")) // 5
                .write(50, new What.StageReached(Stage.ROOT)) // 6
                .write(60, new What.Ship(3, 270, null)) // 7
                .write(70, new What.Loss(5, Cause.PEST)) // 8
                .write(71, new What.Reversal(entry(8), "it was another batch")); // 9
    }

    private record Example(String sentence, Instant at, What what, Refusal because) {
        @Override
        public String toString() {
            return sentence;
        }
    }

    private static Example no(String sentence, double hour, What what, Refusal because) {
        return new Example(sentence, hour(hour), what, because);
    }

    static Stream<Example> examples() {
        return Stream.of(amounts(), shipments(), moments(), corrections()).flatMap(List::stream);
    }

    private static List<Example> amounts() {
        var tooManyTrays = new Sample(8, 20, 1);
        var tooManyCells = new Sample(3, 301, 1);
        var morePlacesThanStuck = new Sample(10, 981, 1);
        var noTray = new Sample(0, 1, 0);
        var noCell = new Sample(1, 0, 0);
        return List.of(
                no("more lost than are alive", 80, loss(671), new Refusal.MoreThanAlive(671, 670)),
                no("a late loss of more than were alive then", 15, loss(951), new Refusal.MoreThanAlive(951, 950)),
                no("a loss of nothing", 80, loss(0), new Refusal.OutOfRange("plants", 0, 1, 670)),
                no("more counted than stuck and not shipped", 80, count(711), new Refusal.MoreThanStuck(711, 710)),
                no("more counted than stuck, early", 25, count(981), new Refusal.MoreThanStuck(981, 980)),
                no("fewer counted than none", 80, count(-1), new Refusal.OutOfRange("plants", -1, 0, 710)),
                no("a sample of more trays than are here", 80, sampled(tooManyTrays), beyond(tooManyTrays, 7)),
                no("a sample of more cells than its trays have", 80, sampled(tooManyCells), beyond(tooManyCells, 7)),
                no(
                        "a sample of more cells than were stuck",
                        5,
                        sampled(morePlacesThanStuck),
                        beyond(morePlacesThanStuck, 10)),
                no("a sample of no tray", 80, sampled(noTray), beyond(noTray, 7)),
                no("a sample of no cell", 80, sampled(noCell), beyond(noCell, 7)),
                no(
                        "more blanks than cells",
                        80,
                        sampled(new Sample(1, 10, 11)),
                        new Refusal.OutOfRange("blanks", 11, 0, 10)),
                no(
                        "fewer blanks than none",
                        80,
                        sampled(new Sample(1, 10, -1)),
                        new Refusal.OutOfRange("blanks", -1, 0, 10)));
    }

    private static List<Example> shipments() {
        return List.of(
                no("more trays than the plants fill", 80, ship(8, 670), new Refusal.MoreThanSaleable(8, 7, 670, 90)),
                no("a shipment of no tray", 80, ship(0, 0), new Refusal.OutOfRange("trays", 0, 1, 7)),
                no("too few plants in the trays", 80, ship(2, 179), new Refusal.PlantsDoNotFitTrays(179, 2, 180, 200)),
                no(
                        "more plants than the trays have cells",
                        80,
                        ship(2, 201),
                        new Refusal.PlantsDoNotFitTrays(201, 2, 180, 200)),
                no("more plants shipped than are alive", 80, ship(7, 671), new Refusal.MoreThanAlive(671, 670)),
                no("a shipment before roots", 45, ship(1, 90), new Refusal.ShipBeforeRooted(Stage.CALLUS)),
                no("a shipment before callus", 5, ship(1, 90), new Refusal.ShipBeforeRooted(Stage.STICK)));
    }

    private static List<Example> moments() {
        return List.of(
                no(
                        "a stage that goes back",
                        80,
                        reached(Stage.CALLUS),
                        new Refusal.StageGoesBack(Stage.CALLUS, Stage.ROOT)),
                no("a stage reached twice", 80, reached(Stage.ROOT), new Refusal.StageGoesBack(Stage.ROOT, Stage.ROOT)),
                no(
                        "sticking as a stage reached",
                        5,
                        reached(Stage.STICK),
                        new Refusal.StageGoesBack(Stage.STICK, Stage.STICK)),
                no(
                        "shipped as a stage, which shipping decides",
                        80,
                        reached(Stage.SHIP),
                        new Refusal.StageGoesBack(Stage.SHIP, Stage.ROOT)),
                no("a loss before sticking", -1, loss(1), new Refusal.BeforeSticking(hour(-1), hour(0))),
                no("a move before sticking", -1, new What.Move("B"), new Refusal.BeforeSticking(hour(-1), hour(0))),
                new Example(
                        "what has not happened yet",
                        NOW.plusSeconds(121),
                        loss(1),
                        new Refusal.InTheFuture(NOW.plusSeconds(121), NOW)),
                new Example(
                        "the future before anything else",
                        NOW.plusSeconds(121),
                        reversal(NOBODY_WROTE),
                        new Refusal.InTheFuture(NOW.plusSeconds(121), NOW)),
                no("a move to where it stands", 80, new What.Move("B"), new Refusal.AlreadyInHouse("B")),
                no("a late move to where it stood", 35, new What.Move("A"), new Refusal.AlreadyInHouse("A")));
    }

    private static List<Example> corrections() {
        return List.of(
                no(
                        "a late loss that leaves too few for a later shipment",
                        55,
                        loss(900),
                        contradicts(7, "ship", 60, new Refusal.MoreThanSaleable(3, 0, 40, 90))),
                no(
                        "a late stage that was entered for later",
                        35,
                        reached(Stage.ROOT),
                        contradicts(6, "stage", 50, new Refusal.StageGoesBack(Stage.ROOT, Stage.ROOT))),
                no(
                        "a late move to where a later one leads",
                        35,
                        new What.Move("B"),
                        contradicts(5, "move", 40, new Refusal.AlreadyInHouse("B"))),
                no(
                        "a reversal of rooting after trays left",
                        80,
                        reversal(entry(6)),
                        contradicts(7, "ship", 60, new Refusal.ShipBeforeRooted(Stage.CALLUS))),
                no(
                        "a reversal of what nobody wrote",
                        80,
                        reversal(NOBODY_WROTE),
                        new Refusal.NoSuchEntry(NOBODY_WROTE)),
                no("a second reversal", 80, reversal(entry(8)), new Refusal.AlreadyReversed(entry(8), entry(9))),
                no(
                        "a reversal of sticking while anything else is on the books",
                        80,
                        reversal(entry(1)),
                        contradicts(2, "loss", 10, new Refusal.BeforeSticking(hour(10), hour(0)))),
                no(
                        "a reversal of a reversal",
                        80,
                        reversal(entry(9)),
                        new Refusal.CannotBeReversed(entry(9), "reversal")));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("examples")
    void refusesAndNamesTheNumbers(Example example) {
        assertThat(record().refusal(example.at, example.what)).isEqualTo(example.because);
    }

    @Test
    void everyKindOfRefusalHasAnExample() {
        Set<Class<?>> shown =
                examples().map(example -> example.because.getClass()).collect(Collectors.toSet());

        assertThat(shown).isEqualTo(Set.of(Refusal.class.getPermittedSubclasses()));
    }

    @ParameterizedTest(name = "{0} trays with {1} plants")
    @CsvSource({
        "0, 10, trays, 0, 20000",
        "20001, 10, trays, 20001, 20000",
        "10, 0, plants, 0, 1000",
        "10, 1001, plants, 1001, 1000",
    })
    void refusesToStickTraysOrPlantsOutOfRange(int trays, int plants, String field, long asked, long most) {
        assertThat(new OneBatch().refusal(hour(0), new What.Stick("A", trays, plants)))
                .isEqualTo(new Refusal.OutOfRange(field, asked, 1, most));
    }

    @ParameterizedTest(name = "{0} trays with {1} plants")
    @CsvSource({"1, 1", "1, 100", "20000, 2000000"})
    void sticksAnythingBetweenOnePlantAndTheMostTraysFull(int trays, int plants) {
        assertThat(new OneBatch()
                        .write(0, new What.Stick("A", trays, plants))
                        .now()
                        .alivePlants())
                .isEqualTo(plants);
    }

    @Test
    void acceptsTheLargestAmountsThatFit() {
        OneBatch batch = OneBatch.ofTenTrays()
                .write(1, sampled(new Sample(10, 980, 0)))
                .write(2, count(980))
                .write(3, reached(Stage.ROOT))
                .write(4, ship(9, 900))
                .write(5, loss(80));

        assertThat(batch.now().alivePlants()).isZero();
        assertThat(batch.now().stage()).isEqualTo(Stage.SHIP);
    }

    @Test
    void acceptsTheSmallestAmountsThatFit() {
        OneBatch batch = OneBatch.ofTenTrays()
                .write(1, sampled(new Sample(1, 1, 0)))
                .write(2, sampled(new Sample(1, 100, 1)))
                .write(3, new What.Look(Stage.CALLUS, 1, 0))
                .write(4, reached(Stage.ROOT))
                .write(5, ship(1, 90))
                .write(6, ship(1, 100))
                .write(7, loss(1))
                .write(8, count(0));

        assertThat(batch.now().alivePlants()).isZero();
    }

    @Test
    void acceptsASampleAndALookOfEveryCell() {
        OneBatch batch = OneBatch.ofTenTrays()
                .write(1, new What.Look(Stage.CALLUS, 980, 980))
                .write(2, sampled(new Sample(3, 300, 300)))
                .write(3, count(980))
                .write(4, sampled(new Sample(10, 980, 980)));

        assertThat(batch.now().looks()).hasSize(1);
        assertThat(batch.now().alivePlants()).as("every cell was blank").isZero();
    }

    @Test
    void aLookOfMoreCellsThanThereArePlacesIsRefused() {
        assertThat(record().refusal(hour(80), new What.Look(Stage.READY, 701, 1)))
                .isEqualTo(new Refusal.OutOfRange("cells", 701, 1, 700));
        assertThat(record().refusal(hour(80), new What.Look(Stage.READY, 0, 0)))
                .isEqualTo(new Refusal.OutOfRange("cells", 0, 1, 700));
        assertThat(record().refusal(hour(80), new What.Look(Stage.READY, 5, 6)))
                .isEqualTo(new Refusal.OutOfRange("reached", 6, 0, 5));
        assertThat(record().refusal(hour(80), new What.Look(Stage.READY, 5, -1)))
                .isEqualTo(new Refusal.OutOfRange("reached", -1, 0, 5));
    }

    @Test
    void acceptsAClockThatRunsTwoMinutesAhead() {
        assertThat(record().decide(NOW.plusSeconds(120), loss(1))).isInstanceOf(Decision.Accepted.class);
    }

    @Test
    void aLateShipmentIsRefusedWhereALaterCountFoundItsPlants() {
        OneBatch batch = OneBatch.ofTenTrays().write(10, reached(Stage.ROOT)).write(20, count(980));

        assertThat(batch.refusal(hour(15), ship(1, 90)))
                .isEqualTo(contradicts(3, "count", 20, new Refusal.MoreThanStuck(980, 890)));
    }

    @Test
    void aStageMayBeSkippedAndTheSkippedOneEnteredLate() {
        OneBatch batch = OneBatch.ofTenTrays().write(50, reached(Stage.READY)).write(20, reached(Stage.CALLUS));

        assertThat(batch.now().reachedAt()).isEqualTo(Map.of(Stage.CALLUS, hour(20), Stage.READY, hour(50)));
    }

    @Test
    void nothingCanBeWrittenOfABatchThatWasNeverStuck() {
        assertThat(new OneBatch().refusal(hour(1), loss(1))).isEqualTo(new Refusal.BeforeSticking(hour(1), hour(0)));
        assertThat(new OneBatch().refusal(hour(1), reversal(entry(1)))).isEqualTo(new Refusal.NoSuchEntry(entry(1)));
    }

    /** Sticking comes with the batch and from nowhere else, so a second one is an error of the program, not of a person. */
    @Test
    void aBatchIsStuckOnce() {
        OneBatch batch = record();

        assertThatIllegalArgumentException()
                .isThrownBy(() -> batch.decide(hour(80), new What.Stick("A", 10, 980)))
                .withMessageContaining("B1");
        assertThat(batch.entries()).hasSize(9);
    }

    private static Refusal beyond(Sample sample, int benchTrays) {
        return new Refusal.SampleBeyondBatch(sample, benchTrays, 100);
    }

    private static Refusal contradicts(int number, String kind, double hour, Refusal because) {
        return new Refusal.ContradictsLater(entry(number), kind, hour(hour), because);
    }

    private static What loss(int plants) {
        return new What.Loss(plants, Cause.BOTRYTIS);
    }

    private static What count(int plants) {
        return new What.Count(plants);
    }

    private static What sampled(Sample sample) {
        return new What.SampledCount(sample);
    }

    private static What reached(Stage stage) {
        return new What.StageReached(stage);
    }

    private static What ship(int trays, int plants) {
        return new What.Ship(trays, plants, null);
    }

    private static What reversal(UUID entry) {
        return new What.Reversal(entry, "a mistake");
    }
}
