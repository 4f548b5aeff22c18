package rootcast.app.problem;

import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.core.exc.StreamReadException;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.exc.MismatchedInputException;
import com.fasterxml.jackson.databind.exc.UnrecognizedPropertyException;
import jakarta.validation.ConstraintViolation;
import jakarta.validation.ConstraintViolationException;
import jakarta.validation.Path;
import jakarta.ws.rs.WebApplicationException;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.time.LocalDate;
import java.time.temporal.Temporal;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jboss.logging.Logger;
import org.jboss.resteasy.reactive.server.ServerExceptionMapper;
import rootcast.saying.Fault;

/** From exception to answer. What went wrong inside stays inside, under a number that the log knows. */
class ProblemMappers {

    private static final Logger LOG = Logger.getLogger(ProblemMappers.class);
    private static final String PROBLEM_JSON = "application/problem+json";

    @ServerExceptionMapper
    Response problem(Problem problem, UriInfo uri) {
        return answer(problem, uri);
    }

    @ServerExceptionMapper
    Response invalid(ConstraintViolationException invalid, UriInfo uri) {
        List<FieldError> errors = invalid.getConstraintViolations().stream()
                .map(violation -> ConstraintFaults.errorOf(fieldOf(violation), violation))
                .sorted(java.util.Comparator.comparing(FieldError::field))
                .toList();
        return answer(Problem.malformed(errors), uri);
    }

    @ServerExceptionMapper
    Response unreadable(JacksonException unreadable, UriInfo uri) {
        return answer(unreadable(unreadable), uri);
    }

    /** Quarkus answers a Jackson mismatch itself unless its exact type is mapped. */
    @ServerExceptionMapper
    Response mismatched(MismatchedInputException unreadable, UriInfo uri) {
        return answer(unreadable(unreadable), uri);
    }

    @ServerExceptionMapper
    Response web(WebApplicationException web, UriInfo uri) {
        if (web.getCause() instanceof JacksonException unreadable) {
            return answer(unreadable(unreadable), uri);
        }
        int status = web.getResponse().getStatus();
        if (status >= 500) {
            return fault((Throwable) web, uri);
        }
        Response.StatusType reason = web.getResponse().getStatusInfo();
        Problem problem = Problem.ofStatus(status, reason.getReasonPhrase(), uri.getPath());
        Response answer = answer(problem, uri);
        String allowed = web.getResponse().getHeaderString("Allow");
        return allowed == null
                ? answer
                : Response.fromResponse(answer).header("Allow", allowed).build();
    }

    /** Rolled back, so that much is known. */
    @ServerExceptionMapper
    Response rolledBack(NothingWritten fault, UriInfo uri) {
        return fault(fault.getCause(), uri, "Nothing was written.");
    }

    /** Outside of a write's transaction nobody here knows what had been committed before. */
    @ServerExceptionMapper
    Response fault(Throwable fault, UriInfo uri) {
        return fault(fault, uri, "If this was a write, send it again with the same Idempotency-Key: it is done once.");
    }

    private static Response fault(Throwable fault, UriInfo uri, String said) {
        UUID number = UUID.randomUUID();
        LOG.errorf(fault, "fault %s on %s", number, uri.getPath());
        return answer(
                new Problem(
                                ProblemType.FAULT,
                                said + " The log has it under " + number + "; please report this number.")
                        .with("fault", number),
                uri);
    }

    private static Problem unreadable(JacksonException unreadable) {
        if (unreadable instanceof StreamReadException broken) {
            var at = broken.getLocation();
            return new Problem(
                            ProblemType.NOT_JSON,
                            "The body is not JSON: line %d, column %d cannot be read."
                                    .formatted(at.getLineNr(), at.getColumnNr()))
                    .with("line", at.getLineNr())
                    .with("column", at.getColumnNr());
        }
        if (unreadable instanceof UnrecognizedPropertyException unknown) {
            List<String> known = unknown.getKnownPropertyIds().stream()
                    .map(String::valueOf)
                    .sorted()
                    .toList();
            return Problem.malformed(pathOf(unknown), Fault.UNKNOWN_FIELD, known);
        }
        if (unreadable instanceof JsonMappingException mismatch) {
            Throwable cause = mismatch.getCause();
            String said = cause instanceof IllegalArgumentException || cause instanceof java.time.DateTimeException
                    ? cause.getMessage()
                    : mismatch.getOriginalMessage();
            FieldError error = mismatched(pathOf(mismatch), mismatch);
            return Problem.malformed(List.of(error.saying("cannot be read: " + plain(said))));
        }
        return Problem.malformed("body", Fault.UNREADABLE);
    }

    private static FieldError mismatched(String field, JsonMappingException mismatch) {
        Class<?> wanted = mismatch instanceof MismatchedInputException typed ? typed.getTargetType() : null;
        if (wanted == null) {
            return FieldError.of(field, Fault.UNREADABLE);
        }
        if (wanted.isEnum()) {
            return FieldError.of(
                    field,
                    Fault.ONE_OF,
                    Arrays.stream(wanted.getEnumConstants())
                            .map(String::valueOf)
                            .toList());
        }
        if (wanted.isPrimitive() || Number.class.isAssignableFrom(wanted)) {
            return FieldError.of(field, Fault.NOT_A_NUMBER);
        }
        if (wanted == LocalDate.class) {
            return FieldError.of(field, Fault.NOT_A_DATE);
        }
        boolean moment = Temporal.class.isAssignableFrom(wanted);
        return FieldError.of(field, moment ? Fault.NOT_AN_INSTANT : Fault.UNREADABLE);
    }

    /** Jackson's message without class names: they say nothing to the sender and tell of the inside. */
    private static String plain(String said) {
        String plain = said.replaceAll("`?(java|rootcast)\\.[\\w.$]+`?(\\[\\])?", "value")
                .replaceAll("\\s*\\(.*", "");
        return plain.length() > 200 ? plain.substring(0, 200) : plain;
    }

    private static String pathOf(JsonMappingException mismatch) {
        String path = mismatch.getPath().stream()
                .map(step -> step.getFieldName() != null ? "." + step.getFieldName() : "[" + step.getIndex() + "]")
                .collect(Collectors.joining());
        return path.isEmpty() ? "body" : path.startsWith(".") ? path.substring(1) : path;
    }

    /** The path without the method and argument that Bean Validation puts before it. */
    private static String fieldOf(ConstraintViolation<?> violation) {
        StringBuilder field = new StringBuilder();
        int depth = 0;
        for (Path.Node node : violation.getPropertyPath()) {
            if (depth++ < 2) {
                continue;
            }
            if (node.getIndex() != null) {
                field.append('[').append(node.getIndex()).append(']');
            }
            if (node.getName() != null && !node.getName().startsWith("<")) {
                field.append(field.isEmpty() ? "" : ".").append(node.getName());
            }
        }
        if (!field.isEmpty()) {
            return field.toString();
        }
        String last = "";
        for (Path.Node node : violation.getPropertyPath()) {
            last = node.getName() == null ? last : node.getName();
        }
        return last;
    }

    private static Response answer(Problem problem, UriInfo uri) {
        Map<String, Object> body = problem.body(uri.getPath());
        return Response.status(problem.status())
                .type(PROBLEM_JSON)
                .header("WWW-Authenticate", problem.status() == 401 ? "Bearer" : null)
                .header("Retry-After", problem.retryAfterSeconds())
                .entity(body)
                .build();
    }
}
