package rootcast.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import rootcast.climate.SetpointPlan.Change;

/** Hours are counted from 10:00 of 2 March 2026. */
class SetpointPlanTest {

    private static final Instant TEN = Instant.parse("2026-03-02T10:00:00Z");
    private static final long HOUR = HourlySeries.hourOf(TEN);

    private static Instant hours(double hours) {
        return TEN.plus(Duration.ofSeconds(Math.round(hours * 3_600)));
    }

    private static final SetpointPlan PLAN = SetpointPlan.of(20.0)
            .with(new Change(hours(5), null))
            .with(new Change(hours(2), 23.0))
            .with(new Change(hours(2.5), 24.0));

    @Test
    void aChangeHoldsFromTheFirstHourThatBeginsAtOrAfterIt() {
        assertThat(PLAN.mediumC(HOUR - 9)).isEqualTo(20);
        assertThat(PLAN.mediumC(HOUR + 1)).isEqualTo(20);
        assertThat(PLAN.mediumC(HOUR + 2)).isEqualTo(23);
        assertThat(PLAN.mediumC(HOUR + 3)).as("after half past").isEqualTo(24);
        assertThat(PLAN.mediumC(HOUR + 4)).isEqualTo(24);
        assertThat(PLAN.mediumC(HOUR + 5)).as("the heat is off").isNull();
        assertThat(PLAN.mediumC(HOUR + 500)).isNull();
    }

    @Test
    void ofTwoChangesInOneHourTheLaterHolds() {
        SetpointPlan twice =
                SetpointPlan.none().with(new Change(hours(1.5), 25.0)).with(new Change(hours(1.25), 15.0));

        assertThat(twice.mediumC(HOUR + 1)).isNull();
        assertThat(twice.mediumC(HOUR + 2)).isEqualTo(25);
        assertThat(twice.changesAfter(HOUR)).containsExactly(HOUR + 2);
    }

    @Test
    void changesAreThoseToCome() {
        assertThat(PLAN.changesAfter(HOUR)).containsExactly(HOUR + 2, HOUR + 3, HOUR + 5);
        assertThat(PLAN.changesAfter(HOUR + 2)).containsExactly(HOUR + 3, HOUR + 5);
        assertThat(PLAN.changesAfter(HOUR + 5)).isEmpty();
        assertThat(SetpointPlan.of(21.0).changesAfter(0)).isEmpty();
    }

    @Test
    void untilAMomentIsWithoutWhatWasToChangeThen() {
        SetpointPlan before = PLAN.until(hours(2.5));

        assertThat(before).isEqualTo(SetpointPlan.of(20.0).with(new Change(hours(2), 23.0)));
        assertThat(before.mediumC(HOUR + 9)).isEqualTo(23);
    }

    @Test
    void theRiseIsFromOneHourToTheOtherWhereBothAreSet() {
        assertThat(PLAN.rise(HOUR + 3, HOUR)).hasValue(4);
        assertThat(PLAN.rise(HOUR, HOUR + 3)).hasValue(-4);
        assertThat(PLAN.rise(HOUR + 6, HOUR)).isEmpty();
        assertThat(PLAN.rise(HOUR, HOUR + 6)).isEmpty();
    }

    @Test
    void plansOfTheSameChangesAreEqualWhateverTheirOrder() {
        SetpointPlan other = SetpointPlan.of(20.0)
                .with(new Change(hours(2.5), 24.0))
                .with(new Change(hours(2), 23.0))
                .with(new Change(hours(5), null));

        assertThat(PLAN).isEqualTo(other).hasSameHashCodeAs(other);
        assertThat(PLAN).isNotEqualTo(SetpointPlan.of(20.0)).isNotEqualTo(null);
        assertThat(SetpointPlan.of(20.0)).isNotEqualTo(SetpointPlan.of(21.0)).doesNotHaveSameHashCodeAs(PLAN);
    }

    @Test
    void whatIsNoTemperatureIsRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Change(TEN, Double.NaN))
                .withMessageContaining("no temperature");
    }
}
