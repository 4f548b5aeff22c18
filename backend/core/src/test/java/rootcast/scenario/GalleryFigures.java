package rootcast.scenario;

import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;

/** What the cases of one truth and lead add up to, and how they are told in a table. */
record GalleryFigures(String truth, int leadDays, List<GalleryCase> cases) {

    static final String HEAD = """
            | truth | lead | cases | in 80 % (95 % bounds) | in 90 % (bounds) | before p10 / after p90 | error, d | calendar, d | trays at p10 there | promises kept first / middle / last day | width, d | pinball, d |
            | --- | ---: | ---: | --- | --- | --- | ---: | ---: | --- | --- | ---: | ---: |""";

    static GalleryFigures of(String truth, int leadDays, List<GalleryCase> cases) {
        return new GalleryFigures(
                truth,
                leadDays,
                cases.stream().filter(each -> each.leadDays() == leadDays).toList());
    }

    ClusteredShare share(Predicate<GalleryCase> hit) {
        var share = new ClusteredShare();
        cases.forEach(each -> share.add(each.cluster(), hit.test(each)));
        return share;
    }

    ClusteredShare kept(int day) {
        var share = new ClusteredShare();
        cases.stream().filter(each -> each.kept() != null).forEach(each -> share.add(each.cluster(), each.kept()[day]));
        return share;
    }

    double mean(ToDoubleFunction<GalleryCase> figure) {
        return cases.stream().mapToDouble(figure).average().orElse(Double.NaN);
    }

    private static String told(ClusteredShare share) {
        return share.cases() == 0
                ? "–"
                : String.format(
                        Locale.ROOT, "%.0f (%.0f-%.0f)", 100 * share.share(), 100 * share.low(), 100 * share.high());
    }

    private static String whole(ClusteredShare share) {
        return share.cases() == 0 ? "–" : String.format(Locale.ROOT, "%.0f", 100 * share.share());
    }

    /** Shares in per cent. */
    String row() {
        return String.format(
                Locale.ROOT,
                "| %s | %d | %d | %s | %s | %s / %s | %.2f | %.2f | %s | %s / %s / %s | %.1f | %.2f |",
                truth,
                leadDays,
                cases.size(),
                told(share(GalleryCase::isInside80)),
                told(share(GalleryCase::isInside90)),
                whole(share(GalleryCase::isEarly)),
                whole(share(GalleryCase::isLate)),
                mean(GalleryCase::error),
                mean(GalleryCase::calendarError),
                whole(share(GalleryCase::traysThere)),
                whole(kept(0)),
                whole(kept(1)),
                whole(kept(2)),
                mean(GalleryCase::width),
                mean(GalleryCase::pinballDays));
    }
}
