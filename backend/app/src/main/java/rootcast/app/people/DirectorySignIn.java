package rootcast.app.people;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import rootcast.app.problem.Problem;
import rootcast.app.problem.ProblemType;

/** Begins a session for somebody whom a directory vouches for; what it says of them are their grants. */
@ApplicationScoped
public class DirectorySignIn {

    @Inject
    Staff staff;

    @Inject
    GrantRules grantRules;

    @Inject
    SignIn signIn;

    @Inject
    PeopleConfig config;

    /** @param claims of the verified token; the configured one holds grants as text, one or many */
    public String in(@Nullable String name, Set<String> names, Function<String, Object> claims, SignIn.From from) {
        if (name == null) {
            throw new Problem(ProblemType.NO_NAME_FROM_DIRECTORY, "The directory gave no name.");
        }
        Staff.nameIsAllowed(name);
        String claim = config.directoryClaim();
        List<Grant> grants = names.contains(claim) ? grants(claims.apply(claim)) : List.of();
        if (grants.isEmpty()) {
            throw new Problem(
                            ProblemType.NO_ROLE_FROM_DIRECTORY,
                            "The directory knows '%s', but claim '%s' holds no role of Rootcast."
                                    .formatted(name, claim))
                    .with("asked", name);
        }
        Object said = names.contains("name") ? claims.apply("name") : name;
        Person person = staff.vouched(name, cut(String.valueOf(said)), grants, Person.Origin.DIRECTORY, from.address());
        return signIn.vouchedFor(person, from);
    }

    private List<Grant> grants(@Nullable Object claim) {
        List<String> texts = new ArrayList<>();
        if (claim instanceof Collection<?> many) {
            many.forEach(each -> texts.add(text(each)));
        } else if (claim != null) {
            texts.addAll(List.of(text(claim).split("[ ,]+")));
        }
        return texts.stream()
                .flatMap(text -> grantRules.read(text).stream())
                .distinct()
                .toList();
    }

    /** JSON strings keep their quotes when they are turned into text. */
    private static String text(Object value) {
        return String.valueOf(value).replaceAll("^\"|\"$", "");
    }

    private static String cut(String text) {
        return text.length() > 120 ? text.substring(0, 120) : text;
    }
}
