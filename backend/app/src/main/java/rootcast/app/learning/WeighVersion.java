package rootcast.app.learning;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import rootcast.app.board.BoardView;
import rootcast.app.crop.ProfileVersion;
import rootcast.app.crop.store.Catalogue;
import rootcast.app.problem.Problem;
import rootcast.app.problem.Thing;
import rootcast.app.trackrecord.TrackRecords;
import rootcast.app.whatif.Answer;
import rootcast.app.whatif.Question;
import rootcast.app.whatif.WhatIf;
import rootcast.crop.Crop;
import rootcast.crop.CropProfile;
import rootcast.trackrecord.BackTest;
import rootcast.trackrecord.Case;
import rootcast.trackrecord.Figures;

/**
 * What adopting a version of a profile would change: for the batches and promises of today, and for what would have been
 * foretold of batches that are ready long since.
 *
 * <p>A learned version knows the very batches that it would be tried on. So each of those is foretold with a profile that
 * was learned anew in the same way without it; that a version in force was learned from some of them is not mended by this.
 */
@ApplicationScoped
public class WeighVersion {

    /** Enough that a fold leaves most batches to learn from, few enough to be waited for. Our choice. */
    static final int FOLDS = 4;

    @Inject
    Catalogue catalogue;

    @Inject
    LearnCrop learnCrop;

    @Inject
    TrackRecords trackRecords;

    @Inject
    WhatIf whatIf;

    /**
     * @param inForce version that it is held against
     * @param heldOut whether the version was learned, and batches were foretold without it knowing them
     * @param batches that were seen ready and could be foretold
     */
    public record Weighed(int inForce, Answer today, boolean heldOut, int batches, List<Lead> leads) {}

    /**
     * The same cases with either profile.
     *
     * @param leadDays days before a batch was ready
     * @param before   with the profile in force
     * @param after    with the version asked about
     */
    public record Lead(int leadDays, Figures before, Figures after) {}

    public Weighed weigh(String code, int version, BoardView view, Instant now) {
        List<ProfileVersion> versions = catalogue.versions(code);
        if (versions.isEmpty()) {
            throw Problem.notFound(Thing.CROP, code);
        }
        ProfileVersion asked = versions.stream()
                .filter(each -> each.version() == version)
                .findFirst()
                .orElseThrow(() -> Problem.notFound(Thing.PROFILE_VERSION, code + " " + version));
        ProfileVersion inForce =
                versions.stream().filter(ProfileVersion::inForce).findFirst().orElseThrow();
        Crop crop = asked.sourced().crop();
        boolean learned = asked.origin() == ProfileVersion.Origin.LEARNED;
        Map<String, CropProfile> without = learned ? learnCrop.learnedWithout(code, FOLDS, now, now) : Map.of();
        CropProfile current = inForce.sourced().crop().profile();
        List<Case> before = trackRecords.under(code, batch -> current);
        List<Case> after = trackRecords.under(code, batch -> without.getOrDefault(batch, crop.profile()));
        return new Weighed(
                inForce.version(),
                whatIf.answer(Question.profile(crop), view),
                learned,
                (int) before.stream().map(Case::batch).distinct().count(),
                leads(before, after));
    }

    private static List<Lead> leads(List<Case> before, List<Case> after) {
        List<Lead> leads = new ArrayList<>();
        for (int leadDays : BackTest.LEADS_DAYS) {
            Figures now = Figures.of(of(before, leadDays).toList());
            if (now.n() > 0) {
                leads.add(new Lead(leadDays, now, Figures.of(of(after, leadDays).toList())));
            }
        }
        return leads;
    }

    private static Stream<Case> of(List<Case> cases, int leadDays) {
        return cases.stream().filter(each -> each.leadDays() == leadDays);
    }
}
