package rootcast.scenario;

import java.util.List;
import rootcast.scenario.Truth.Floor;
import rootcast.scenario.Truth.Known;
import rootcast.scenario.Truth.People;
import rootcast.scenario.Truth.Rates;
import rootcast.scenario.Truth.Response;

/** The truths that are tried: the usual one, and each with one thing otherwise. */
final class GalleryOfTruths {

    private GalleryOfTruths() {}

    static List<Truth> all() {
        Truth usual = Truth.USUAL;
        People people = People.USUAL;
        return List.of(
                usual,
                usual.with("beta response", Response.BETA),
                usual.with("straight to a plateau", Response.PLATEAU),
                usual.with("one rate per batch", new Rates(0.1, 0, 0, 0)),
                usual.with("each stage a rate of its own", new Rates(0, 0.1, 0, 0)),
                usual.with("trays of a batch differ", new Rates(0.09, 0.035, 0.08, 0)),
                usual.with("a tenth faster in a season", new Rates(0.09, 0.035, 0, 0.1)),
                usual.with("looked at on Mondays", people.onMondaysOnly()),
                usual.with("looked at every 4 to 8 days", people.everyDays(4, 8)),
                usual.with("ten cells looked at", people.calling(10, 0.9, 0)),
                usual.with("called complete at 7 in 10", people.calling(40, 0.7, 0)),
                usual.with("entered up to 4 days late", people.calling(40, 0.9, 4)),
                usual.with("one stage in five not entered", people.writing(0.2, 0)),
                usual.with("one record in twenty wrong", people.writing(0, 0.05)),
                usual.with("one batch in four moved unrecorded", new Floor(0.25, 0, 0, false, 0)),
                usual.with("one batch in six loses 10-30 %", new Floor(0, 1 / 6.0, 0, false, 0)),
                usual.with("one lot in eight sick", new Floor(0, 0, 1 / 8.0, false, 0)),
                usual.with("cold snaps", new Floor(0, 0, 0, true, 0)),
                usual.with("a drifting probe", new Floor(0, 0, 0, false, 2)),
                usual.with("nothing finished, profile right", new Known(1, 0)),
                usual.with("nothing finished, 40 % too long", new Known(1.4, 0)),
                usual.with("nothing finished, 30 % too short", new Known(0.7, 0)),
                usual.with("5 finished", new Known(1.25, 5)),
                usual.with("10 finished", new Known(1.25, 10)),
                usual.with("20 finished", new Known(1.25, 20)),
                usual.with("60 finished, profile 40 % too long", new Known(1.4, 60)),
                usual.with("60 finished, profile 30 % too short", new Known(0.7, 60)));
    }
}
