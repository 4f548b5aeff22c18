package rootcast.app.learning.rest;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.inject.Inject;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Instant;
import java.time.InstantSource;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;
import rootcast.app.crop.SourcedCrop;
import rootcast.app.crop.rest.ProfileWire;
import rootcast.app.crop.store.Catalogue;
import rootcast.app.learning.LearnCrop;
import rootcast.app.once.Once;
import rootcast.app.once.OnceKey;
import rootcast.app.once.SetupLog;
import rootcast.app.people.Needs;
import rootcast.app.people.Right;
import rootcast.app.people.Rights;
import rootcast.learning.Evidence;

/** Asks what a crop's batches teach. */
@Path("/api/crops/{code}/learning")
@Needs(Right.SET_UP)
public class LearningResource {

    @Inject
    SetupLog log;

    @Inject
    Rights rights;

    @Inject
    LearnCrop learnCrop;

    @Inject
    Catalogue catalogue;

    @Inject
    Once once;

    @Inject
    InstantSource time;

    @Inject
    ObjectMapper json;

    /** A version that nothing uses until it is adopted. */
    public record ProposalWire(int version, ProfileWire profile, Evidence evidence) {}

    @POST
    @Produces(MediaType.APPLICATION_JSON)
    @APIResponseSchema(value = ProposalWire.class, responseCode = "201")
    public Response learn(@HeaderParam("Idempotency-Key") @Nullable String key, @RestPath String code) {
        String path = "/api/crops/" + code;
        Instant now = time.instant();
        rights.everywhere(Right.SET_UP);
        // Learned before anybody is kept waiting for the one place in the queue of writers.
        LearnCrop.Proposal proposal = learnCrop.learn(code, now);
        Once.Answer answer = once.write(OnceKey.optional(key), "POST " + path + "/learning", "", 201, () -> {
            log.add("POST " + path + "/learning");
            return stored(proposal, now);
        });
        return Response.status(answer.status())
                .type(MediaType.APPLICATION_JSON)
                .location(URI.create(path + "/profiles"))
                .entity(answer.body())
                .build();
    }

    private ProposalWire stored(LearnCrop.Proposal proposal, Instant now) {
        Evidence evidence = proposal.learned().evidence();
        SourcedCrop sourced = proposal.sourced();
        int version = catalogue.propose(sourced, text(evidence), now);
        SourcedCrop numbered = new SourcedCrop(sourced.crop(), version, sourced.sources(), sourced.note());
        return new ProposalWire(version, ProfileWire.of(numbered), evidence);
    }

    private String text(Evidence evidence) {
        try {
            return json.writeValueAsString(evidence);
        } catch (JsonProcessingException impossible) {
            throw new IllegalStateException(impossible);
        }
    }
}
