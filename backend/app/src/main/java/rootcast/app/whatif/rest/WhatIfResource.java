package rootcast.app.whatif.rest;

import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;
import rootcast.app.board.BoardView;
import rootcast.app.board.LiveBoard;
import rootcast.app.board.rest.BoardQuery;
import rootcast.app.outlook.BatchSnapshot;
import rootcast.app.outlook.LiveBatches;
import rootcast.app.people.Needs;
import rootcast.app.people.Right;
import rootcast.app.people.Rights;
import rootcast.app.problem.Problem;
import rootcast.app.site.LiveSites;
import rootcast.app.site.store.Places;
import rootcast.app.whatif.Question;
import rootcast.app.whatif.WhatIf;
import rootcast.saying.Fault;
import rootcast.site.House;

/** Questions about houses set otherwise and batches moved. Nothing is stored. */
@Path("/api/what-if")
@Needs(Right.SET_UP)
public class WhatIfResource {

    /** "From today" named as a date began some hours ago; that counts from now. Anything earlier is history. */
    private static final Duration TODAY = Duration.ofHours(24);

    @Inject
    Rights rights;

    @Inject
    WhatIf whatIf;

    @Inject
    LiveBoard board;

    @Inject
    LiveBatches batches;

    @Inject
    LiveSites sites;

    @Inject
    Places places;

    @Inject
    InstantSource time;

    @POST
    public WhatIfWire.Answered ask(
            @NotNull @Valid WhatIfWire.Asked asked,
            @RestQuery @Nullable String from,
            @RestQuery @Nullable String weeks,
            @RestQuery @Nullable String confidence) {
        BoardView view = BoardQuery.view(from, weeks, confidence, () -> board.currentWeek(null, time.instant()));
        return WhatIfWire.of(whatIf.answer(question(asked), view), view.confidence());
    }

    private Question question(WhatIfWire.Asked asked) {
        List<Question.Setpoint> setpoints = new ArrayList<>();
        List<Question.Move> moves = new ArrayList<>();
        int index = 0;
        for (WhatIfWire.SetpointAsked each :
                asked.setpoints() == null ? List.<WhatIfWire.SetpointAsked>of() : asked.setpoints()) {
            String at = "setpoints[" + index++ + "]";
            House house = house(at + ".house", each.house());
            setpoints.add(new Question.Setpoint(
                    house.code(), each.mediumC(), moment(at + ".from", each.from(), house.site())));
        }
        index = 0;
        for (WhatIfWire.MoveAsked each : asked.moves() == null ? List.<WhatIfWire.MoveAsked>of() : asked.moves()) {
            String at = "moves[" + index++ + "]";
            moves.add(move(at, each));
        }
        if (setpoints.isEmpty() && moves.isEmpty()) {
            throw Problem.malformed("setpoints", Fault.NOTHING_ASKED);
        }
        return new Question(setpoints, moves);
    }

    private Question.Move move(String at, WhatIfWire.MoveAsked each) {
        BatchSnapshot batch =
                batches.now().batch(each.batch()).orElseThrow(() -> Problem.unknownCode(at + ".batch", each.batch()));
        if (batch.state().isFinished()) {
            throw Problem.notAllowed(at + ".batch", each.batch(), Fault.NO_PLANTS_LEFT);
        }
        House house = house(at + ".house", each.house());
        if (!house.site().equals(batch.batch().site())) {
            throw Problem.notAllowed(
                    at + ".house",
                    each.house(),
                    Fault.OTHER_SITE,
                    house.site(),
                    batch.batch().site());
        }
        return new Question.Move(each.batch(), house.code(), moment(at + ".from", each.from(), house.site()));
    }

    private House house(String field, String code) {
        House house = places.house(code).orElseThrow(() -> Problem.unknownCode(field, code));
        rights.at(house.site(), Right.SET_UP);
        return house;
    }

    private Instant moment(String field, String text, String site) {
        Instant asked;
        try {
            asked = text.length() == "2026-03-02".length()
                    ? sites.site(site).startOf(LocalDate.parse(text))
                    : OffsetDateTime.parse(text).toInstant();
        } catch (DateTimeParseException neither) {
            throw Problem.malformed(field, Fault.NOT_A_DATE);
        }
        Instant now = time.instant();
        if (asked.isBefore(now.minus(TODAY))) {
            throw Problem.notAllowed(field, text, Fault.PAST);
        }
        return asked.isBefore(now) ? now : asked;
    }
}
