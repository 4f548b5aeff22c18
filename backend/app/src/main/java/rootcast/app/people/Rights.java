package rootcast.app.people;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import rootcast.app.problem.Problem;

/** Asks for a right where a use case starts. */
@ApplicationScoped
public class Rights {

    @Inject
    Caller caller;

    /** Refuses whoever does not hold the right at this site. */
    public void at(String site, Right right) {
        if (!caller.asking().may(right, site)) {
            throw Problem.noRight(
                            "The right %s is not yours at site '%s'. An owner can grant it.".formatted(right, site))
                    .with("right", right.name())
                    .with("site", site);
        }
    }

    /** Refuses whoever holds the right at some sites only: what is to be changed is shared by all. */
    public void everywhere(Right right) {
        if (!caller.asking().mayEverywhere(right)) {
            throw Problem.noRight(
                            "The right %s is yours at some sites only; this concerns all of them. An owner can grant it."
                                    .formatted(right))
                    .with("right", right.name());
        }
    }
}
