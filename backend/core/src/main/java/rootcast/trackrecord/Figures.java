package rootcast.trackrecord;

import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;

/**
 * What some cases add up to. Without a case every figure but the counts is not a number.
 *
 * @param biasDays       mean error; over 0: batches are ready later than predicted
 * @param coverage50     share of batches that were ready within the middle half; likewise 80 % and 90 %
 * @param promisedCases  cases in which a tray could have been promised
 * @param promisedKept   share of these in which all trays promised were there
 * @param calendarMaeDays mean absolute error of counting days
 * @param calendarSkill  1 − mean absolute error / that of counting days: 0.4 is 40 % less error
 */
public record Figures(
        int n,
        double maeDays,
        double biasDays,
        double coverage50,
        double coverage80,
        double coverage90,
        double pinballDays,
        double crpsDays,
        int promisedCases,
        double promisedKept,
        double calendarMaeDays,
        double calendarSkill,
        double degreeDaysMaeDays,
        double degreeDaysSkill) {

    public static Figures of(List<Case> cases) {
        double mae = mean(cases, each -> Math.abs(each.errorDays()));
        double calendar = mean(cases, each -> Math.abs(each.calendarDays()));
        double degreeDays = mean(cases, each -> Math.abs(each.degreeDaysDays()));
        List<Case.Promised> promised = cases.stream()
                .flatMap(each -> Stream.ofNullable(each.promised()))
                .toList();
        double kept = promised.stream().filter(Case.Promised::kept).count();
        return new Figures(
                cases.size(),
                mae,
                mean(cases, Case::errorDays),
                mean(cases, Case::inside50),
                mean(cases, Case::inside80),
                mean(cases, Case::inside90),
                mean(cases, Case::pinballDays),
                mean(cases, Case::crpsDays),
                promised.size(),
                kept / promised.size(),
                calendar,
                1 - mae / calendar,
                degreeDays,
                1 - mae / degreeDays);
    }

    private static double mean(List<Case> cases, ToDoubleFunction<Case> figure) {
        return cases.stream().mapToDouble(figure).average().orElse(Double.NaN);
    }
}
