package rootcast.app.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import rootcast.app.demo.HouseModel.Cover;
import rootcast.app.demo.HouseModel.Outdoors;
import rootcast.app.demo.HouseModel.State;

class HouseModelTest {

    /** No heat, vents out of reach; cover 4 and exchange 9 W·m⁻²·K⁻¹. */
    private static final HouseModel COLD = new HouseModel(25_000, 130_000, 4, 9, 80, 0, 0, 17, 20, 50);

    /**
     * By hand: at rest the medium's evaporation of 8 W·m⁻² comes through the exchange, so it lies 8/9 °C below the air;
     * the same 8 W·m⁻² come in through the cover, so the air lies 8/4 = 2 °C below outdoors.
     */
    @Test
    void anUnheatedHouseSettlesWhereItsHeatBalanceCloses() {
        State settled = COLD.settled(new Outdoors(12, 0));

        assertThat(settled.airC()).isCloseTo(10, within(1e-3));
        assertThat(settled.mediumC()).isCloseTo(10 - 8.0 / 9, within(1e-3));
    }

    /** By hand: 200 W·m⁻² under the screen give 70 to the air and 2 more than evaporation takes to the medium. */
    @Test
    void sunWarmsAirAndMediumByTheirShares() {
        State settled = COLD.settled(new Outdoors(12, 200));

        // The medium loses 8 − 200·(0.06 − 0.05) = 6 W·m⁻² and draws them from the air; the cover passes 70 − 6 = 64
        // out.
        assertThat(settled.airC()).isCloseTo(12 + 64 / 4.0, within(1e-3));
        assertThat(settled.mediumC()).isCloseTo(12 + 64 / 4.0 - 6 / 9.0, within(1e-3));
    }

    /** By hand: 350 W·m⁻² outside are 250 + 0.4·100 = 290 under the screen. */
    @Test
    void theScreenCutsTheSunAboveItsLimit() {
        // 290·0.35 = 101.5 to the air, 290·0.01 = 2.9 to the medium, 8 − 2.9 drawn from the air: 96.4 through the
        // cover.
        assertThat(COLD.settled(new Outdoors(0, 350)).airC()).isCloseTo(96.4 / 4, within(1e-3));
    }

    /** 310 W·m⁻²·0.45·2.02 µmol/J = 281.8 µmol·m⁻²·s⁻¹; the recipe until roots are there ends at 300. */
    @Test
    void theSecondScreenKeepsTheLightThatCuttingsBear() {
        assertThat(HouseModel.photonFlux(new Outdoors(20, 1000))).isCloseTo(281.8, within(0.1));
    }

    @ParameterizedTest(name = "under {0} bottom heat holds the medium on a frosty night")
    @EnumSource(Cover.class)
    void bottomHeatHoldsTheSetpointInWinter(Cover cover) {
        State night = HouseModel.of(cover, 22).settled(new Outdoors(-10, 0));

        assertThat(night.mediumC()).isBetween(21.4, 22.0);
        assertThat(night.airC()).isLessThan(night.mediumC());
    }

    @Test
    void aSunnyDayWarmsTheMediumAboveItsSetpointButNotToHarm() {
        State noon = HouseModel.of(Cover.GLASS, 22).settled(new Outdoors(28, 950));

        assertThat(noon.mediumC()).isBetween(24.0, 34.0);
        assertThat(noon.airC()).isGreaterThan(28);
    }

    @Test
    void heatStopsAtFullPower() {
        HouseModel weak = new HouseModel(25_000, 130_000, 4, 9, 80, 0, 30, 17, 40, 60);

        // By hand: 30 − 8 = 22 W·m⁻² go through exchange and cover: 22/4 and 22/9 °C.
        State settled = weak.settled(new Outdoors(5, 0));
        assertThat(settled.airC()).isCloseTo(5 + 22 / 4.0, within(1e-3));
        assertThat(settled.mediumC()).isCloseTo(5 + 22 / 4.0 + 22 / 9.0, within(1e-3));
    }

    @Test
    void manyShortStepsComeToTheSameAsOneLong() {
        HouseModel house = HouseModel.of(Cover.DOUBLE_FILM, 23);
        Outdoors outdoors = new Outdoors(4, 300);
        State start = new State(15, 16);
        State inSteps = start;
        for (int minute = 0; minute < 240; minute++) {
            inSteps = house.after(inSteps, outdoors, Duration.ofSeconds(60));
        }

        State atOnce = house.after(start, outdoors, Duration.ofHours(4));

        assertThat(atOnce.mediumC()).isCloseTo(inSteps.mediumC(), within(1e-9));
        assertThat(atOnce.airC()).isCloseTo(inSteps.airC(), within(1e-9));
    }

    @Test
    void refusesVentsThatOpenWhileTheHeaterWorks() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new HouseModel(25_000, 130_000, 4, 9, 80, 220, 90, 20, 23, 19))
                .withMessageContaining("19.0 °C")
                .withMessageContaining("20.0 °C");
    }
}
