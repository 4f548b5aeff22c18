package rootcast.site;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.Year;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * ISO 8601 weeks at the edges of the year, from the table of facts-operations D. V = also printed by a source outside,
 * the rest computed there.
 */
class ShipWeekTest {

    @ParameterizedTest(name = "{0} lies in {1}, day {2}")
    @CsvSource({
        "2005-01-01, 2004-W53, 6", // V
        "2005-01-02, 2004-W53, 7", // V
        "2006-01-01, 2005-W52, 7", // V
        "2007-01-01, 2007-W01, 1", // V
        "2007-12-31, 2008-W01, 1", // V
        "2008-12-28, 2008-W52, 7", // V
        "2008-12-29, 2009-W01, 1", // V
        "2008-12-31, 2009-W01, 3", // V
        "2009-12-31, 2009-W53, 4", // V
        "2010-01-01, 2009-W53, 5", // V
        "2010-01-03, 2009-W53, 7", // V
        "2010-01-04, 2010-W01, 1", // V
        "2020-12-31, 2020-W53, 4",
        "2021-01-03, 2020-W53, 7",
        "2024-12-30, 2025-W01, 1",
        "2025-12-29, 2026-W01, 1",
        "2026-12-31, 2026-W53, 4",
        "2027-01-03, 2026-W53, 7",
    })
    void aDayLiesInItsIsoWeek(LocalDate day, String week, int dayOfWeek) {
        assertThat(ShipWeek.of(day)).hasToString(week);
        assertThat(ShipWeek.parse(week).day(DayOfWeek.of(dayOfWeek))).isEqualTo(day);
    }

    /** COMPUTED list of facts-operations D. */
    @Test
    void theYearsWith53WeeksAreThoseOfTheTable() {
        List<Integer> longYears = new ArrayList<>();
        for (int year = 2000; year <= 2050; year++) {
            if (has53(year)) {
                longYears.add(year);
            }
        }
        assertThat(longYears).containsExactly(2004, 2009, 2015, 2020, 2026, 2032, 2037, 2043, 2048);
    }

    /** V: ISO week date, 71 long years in the 400-year cycle. */
    @Test
    void seventyOneYearsIn400Have53Weeks() {
        int count = 0;
        for (int year = 2000; year < 2400; year++) {
            count += has53(year) ? 1 : 0;
        }
        assertThat(count).isEqualTo(71);
    }

    /** By the definition: week 1 holds 4 January and the first Thursday. */
    @Test
    void weekOneHoldsTheFourthOfJanuaryAndTheFirstThursday() {
        for (int year = 1990; year < 2060; year++) {
            LocalDate fourth = LocalDate.of(year, 1, 4);
            assertThat(ShipWeek.of(fourth)).hasToString("%04d-W01".formatted(year));
            LocalDate thursday = ShipWeek.of(fourth).day(DayOfWeek.THURSDAY);
            assertThat(thursday.getYear()).isEqualTo(year);
            assertThat(thursday.getDayOfYear()).isLessThanOrEqualTo(7);
        }
    }

    @Test
    void textAndWeekGoBothWaysForEveryWeekOfEightyYears() {
        ShipWeek week = ShipWeek.parse("1990-W01");
        while (week.monday().getYear() < 2070) {
            assertThat(ShipWeek.parse(week.toString())).isEqualTo(week);
            week = week.plusWeeks(1);
        }
    }

    @Test
    void countingWeeksCrossesALongYear() {
        assertThat(ShipWeek.parse("2026-W52").plusWeeks(2)).hasToString("2027-W01");
        assertThat(ShipWeek.parse("2026-W01").weeksUntil(ShipWeek.parse("2027-W01")))
                .isEqualTo(53);
        assertThat(ShipWeek.parse("2027-W01").weeksUntil(ShipWeek.parse("2026-W53")))
                .isEqualTo(-1);
        assertThat(ShipWeek.parse("2026-W53")).isLessThan(ShipWeek.parse("2027-W01"));
    }

    /** A lenient parser turns 2025-W53 into 2026-W01 without a word. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "2025-W53",
                "2027-W53",
                "2026-W00",
                "2026-W54",
                "2026-W5",
                "2026W48",
                "2026-48",
                "2026-w48",
                "",
                "2026-W48-1",
                " 2026-W48",
                "26-W48"
            })
    void whatIsNotAWeekIsRefusedWithItsText(String text) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ShipWeek.parse(text))
                .withMessageContaining("'" + text + "'");
    }

    @Test
    void aWeekBeginsOnNoOtherDayThanMonday() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new ShipWeek(LocalDate.parse("2026-11-24")))
                .withMessageContaining("TUESDAY");
    }

    /** The pattern letter Y and the first day of the week follow the locale; 2026-12-31 would print 2027 in the US. */
    @ParameterizedTest
    @ValueSource(strings = {"en-US", "de-DE", "ar-EG", "th-TH-u-nu-thai"})
    void theWrittenFormDoesNotDependOnTheLocale(String tag) {
        Locale before = Locale.getDefault();
        Locale.setDefault(Locale.forLanguageTag(tag));
        try {
            assertThat(ShipWeek.of(LocalDate.parse("2026-12-31"))).hasToString("2026-W53");
            assertThat(ShipWeek.parse("2026-W53").monday()).isEqualTo(LocalDate.parse("2026-12-28"));
        } finally {
            Locale.setDefault(before);
        }
    }

    private static boolean has53(int year) {
        LocalDate last = Year.of(year).atMonth(12).atDay(28);
        return ShipWeek.of(last).toString().endsWith("W53");
    }
}
