package rootcast.site;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Days of a site by its wall clock. Lengths of days in 2026 from facts-operations D (computed with Java 17.0.15). */
class SiteTest {

    @ParameterizedTest(name = "{1} in {0} has {2}")
    @CsvSource({
        "America/New_York,    2026-03-08, PT23H",
        "America/New_York,    2026-11-01, PT25H",
        "Europe/Amsterdam,    2026-03-29, PT23H",
        "Europe/Amsterdam,    2026-10-25, PT25H",
        "Australia/Lord_Howe, 2026-04-05, PT24H30M",
        "Australia/Lord_Howe, 2026-10-04, PT23H30M",
        "America/Santiago,    2026-04-04, PT25H",
        "America/Santiago,    2026-09-06, PT23H",
        "America/Phoenix,     2026-03-08, PT24H",
        "Africa/Nairobi,      2026-03-29, PT24H",
    })
    void aDayLastsAsLongAsTheClockSays(String zone, LocalDate day, Duration length) {
        Site site = site(zone);

        assertThat(Duration.between(site.startOf(day), site.startOf(day.plusDays(1))))
                .isEqualTo(length);
    }

    /** Santiago has no midnight on 2026-09-06: the clock goes from 23:59:59 −04:00 to 01:00 −03:00. */
    @Test
    void aDayWithoutMidnightStartsAtItsFirstInstant() {
        Site site = site("America/Santiago");
        Instant start = site.startOf(LocalDate.parse("2026-09-06"));

        assertThat(start).isEqualTo(Instant.parse("2026-09-06T04:00:00Z"));
        assertThat(site.dayOf(start)).isEqualTo(LocalDate.parse("2026-09-06"));
        assertThat(site.dayOf(start.minusNanos(1))).isEqualTo(LocalDate.parse("2026-09-05"));
    }

    @Test
    void oneInstantLiesOnDifferentDaysOfDifferentSites() {
        Instant instant = Instant.parse("2026-11-25T04:30:00Z");

        assertThat(site("America/New_York").dayOf(instant)).isEqualTo(LocalDate.parse("2026-11-24"));
        assertThat(site("Europe/Amsterdam").dayOf(instant)).isEqualTo(LocalDate.parse("2026-11-25"));
    }

    @Test
    void aSundayEveningInNewYorkIsStillTheOldWeekThere() {
        Instant instant = Instant.parse("2027-01-04T03:00:00Z");

        assertThat(ShipWeek.of(site("America/New_York").dayOf(instant))).hasToString("2026-W53");
        assertThat(ShipWeek.of(site("Europe/Amsterdam").dayOf(instant))).hasToString("2027-W01");
    }

    @Test
    void theShipDayIsTheSitesOwn() {
        var friday = new Site("s", "South", ZoneId.of("Europe/Amsterdam"), DayOfWeek.FRIDAY);

        assertThat(friday.shipDayOf(ShipWeek.parse("2026-W53"))).isEqualTo(LocalDate.parse("2027-01-01"));
        assertThat(site("Africa/Nairobi").shipDayOf(ShipWeek.parse("2026-W53")))
                .isEqualTo(LocalDate.parse("2026-12-28"));
    }

    private static Site site(String zone) {
        return new Site("n", "North", ZoneId.of(zone), DayOfWeek.MONDAY);
    }
}
