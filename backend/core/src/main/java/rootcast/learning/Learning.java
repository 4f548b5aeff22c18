package rootcast.learning;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.apache.commons.statistics.distribution.NormalDistribution;
import rootcast.crop.Cardinals;
import rootcast.crop.CropProfile;
import rootcast.crop.RateFactors;
import rootcast.crop.Stage;
import rootcast.crop.StageProfile;
import rootcast.crop.Variation;
import rootcast.learning.RateFit.Fitted;
import rootcast.numerics.Beta;
import rootcast.numerics.BetaBinomialFit;
import rootcast.outlook.CellSpread;
import rootcast.outlook.DevelopmentRate;

/**
 * From the batches of a crop to the profile that they speak for.
 *
 * <p>Days, spreads and the rates of varieties and sites come from {@link RateFit}, cardinal temperatures where they are
 * told from {@link CardinalSearch} and then the days once more with these, survival by stage from the beta-binomial
 * likelihood pooled with the profile that people stated. Without a batch it is the profile in force. Equal records give equal answers to the last
 * bit, in whatever order they come.
 */
public final class Learning {

    /** The 90 % point of a standard normal, from tables: 80 % lie between it and its negative. */
    private static final double Z_80 = 1.2815515655;

    /** How far the crop's survival may lie from the profile's, in logit, before any batch is seen. Our choice. */
    private static final double LOGIT_SPREAD = 0.7;

    /** The same for ln of the survival weight. Our choice. */
    private static final double LOG_WEIGHT_SPREAD = 1;

    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

    private final CropProfile stated;
    private final CropProfile inForce;
    private final List<BatchRecord> records;

    private Learning(CropProfile stated, CropProfile inForce, List<BatchRecord> records) {
        this.stated = stated;
        this.inForce = inForce;
        this.records =
                records.stream().sorted(Comparator.comparing(BatchRecord::id)).toList();
        Set<String> ids = new HashSet<>();
        this.records.stream()
                .filter(record -> !ids.add(record.id()))
                .findFirst()
                .ifPresent(twice -> {
                    throw new IllegalArgumentException("batch " + twice.id() + " has two records");
                });
    }

    /** Of a crop of which nothing was learned before. */
    public static LearnedProfile learn(CropProfile stated, List<BatchRecord> records, Instant asOf) {
        return learn(stated, stated, records, asOf);
    }

    /**
     * @param stated  what people say of the crop, whatever was learned since: see {@link rootcast.crop.StatedProfile}
     * @param inForce that the evidence is told against; it has no part in what is learned
     */
    public static LearnedProfile learn(
            CropProfile stated, CropProfile inForce, List<BatchRecord> records, Instant asOf) {
        return new Learning(stated, inForce, records).learned(asOf);
    }

    private LearnedProfile learned(Instant asOf) {
        RateFit fit = new RateFit(records, stated, rates(stated));
        Fitted fitted = fit.fit();
        var search = new CardinalSearch(records, stated, fit, fitted);
        List<Evidence.OfCardinals> cardinals =
                Stage.GROWING.stream().map(search::search).toList();
        CropProfile warmed = with(cardinals);
        if (!warmed.equals(stated)) {
            fitted = new RateFit(records, warmed, rates(warmed)).fit();
        }
        List<Beta> survivals = Stage.GROWING.stream().map(this::survival).toList();
        CropProfile profile = profile(warmed, fitted, search.rateVariance(), survivals);
        return new LearnedProfile(profile, evidence(asOf, profile, fitted, cardinals));
    }

    private static WarmDays.Rates[] rates(CropProfile profile) {
        return profile.stages().stream()
                .map(stage -> new WarmDays.Rates(new DevelopmentRate(stage.cardinals())))
                .toArray(WarmDays.Rates[]::new);
    }

    private CropProfile with(List<Evidence.OfCardinals> learned) {
        List<StageProfile> stages = new ArrayList<>();
        for (int k = 0; k < learned.size(); k++) {
            StageProfile stage = stated.stages().get(k);
            Cardinals now = stage.cardinals();
            Double minC = learned.get(k).minC();
            Double optimumC = learned.get(k).optimumC();
            Cardinals next = new Cardinals(
                    now.form(),
                    minC == null ? now.minC() : minC,
                    optimumC == null ? now.optimumC() : optimumC,
                    now.maxC(),
                    now.referenceC());
            stages.add(new StageProfile(
                    stage.stage(), stage.daysAtReference(), next, stage.survivalMean(), stage.survivalWeight()));
        }
        return new CropProfile(
                stages,
                stated.rateSpread(),
                stated.holdDays(),
                stated.cellSpread(),
                stated.rates(),
                stated.variation());
    }

    private Beta survival(Stage stage) {
        StageProfile prior = stated.of(stage);
        return BetaBinomialFit.pooled(
                groups(stage),
                Beta.ofMean(prior.survivalMean(), prior.survivalWeight()),
                LOGIT_SPREAD,
                LOG_WEIGHT_SPREAD);
    }

    private List<BetaBinomialFit.Group> groups(Stage stage) {
        return records.stream()
                .map(record -> record.lived().get(stage))
                .filter(lived -> lived != null && lived.begun() > 0)
                .map(lived -> new BetaBinomialFit.Group(lived.survived(), lived.begun()))
                .toList();
    }

    /** @param cardinalsVariance of ln(a stage's rate) because its temperatures are not known exactly */
    private CropProfile profile(CropProfile warmed, Fitted fitted, double cardinalsVariance, List<Beta> survivals) {
        if (records.isEmpty()) {
            return inForce;
        }
        double[] days = daysUntilComplete(warmed, fitted);
        List<StageProfile> stages = new ArrayList<>();
        for (int k = 0; k < Matrix3.N; k++) {
            Beta survival = survivals.get(k);
            stages.add(new StageProfile(
                    Stage.GROWING.get(k),
                    rounded(days[k], 3),
                    warmed.stages().get(k).cardinals(),
                    rounded(survival.mean(), 5),
                    rounded(survival.alpha() + survival.beta(), 1)));
        }
        double ofStages = fitted.foretoldStageVariance() + cardinalsVariance;
        double whole = fitted.foretoldBatchVariance() + ofStages;
        double share = ofStages / whole;
        return new CropProfile(
                stages,
                rounded(Math.sqrt(whole), 4),
                stated.holdDays(),
                rounded(fitted.cellSpread(), 4),
                new RateFactors(rounded(fitted.varietyRates()), rounded(fitted.siteRates())),
                new Variation(
                        fitted.roundsDays(),
                        rounded(Math.max(Variation.LEAST_STAGE_SHARE, Math.min(Variation.MOST_STAGE_SHARE, share)), 3),
                        rounded(fitted.cellsDiffer(), 3),
                        rounded(fitted.daysDoubt(), 4),
                        rounded(enteredShare(), 3),
                        rounded(NORMAL.cumulativeProbability(fitted.calledQuantile()), 3)));
    }

    /** From those between calls, as the outlook has it. */
    private double[] daysUntilComplete(CropProfile warmed, Fitted fitted) {
        CellSpread[] complete = CellSpread.ofStages(new CropProfile(
                warmed.stages(),
                warmed.rateSpread(),
                warmed.holdDays(),
                fitted.cellSpread(),
                RateFactors.NONE,
                warmed.variation()));
        CellSpread[] called = complete.clone();
        Arrays.setAll(called, k -> complete[k].ending(fitted.calledQuantile()));
        double[] between = Arrays.stream(fitted.logDays()).map(Math::exp).toArray();
        double[] since = CellSpread.daysSinceSticking(between, called, complete);
        double[] days = new double[Matrix3.N];
        Arrays.setAll(days, k -> since[k] - (k == 0 ? 0 : since[k - 1]));
        return days;
    }

    /** Of the stages that a later entry shows to have ended; as likely as not before any was seen (Laplace's rule of succession). */
    private double enteredShare() {
        int passed = records.stream().mapToInt(BatchRecord::passed).sum();
        int entered = records.stream().mapToInt(BatchRecord::entered).sum();
        return (entered + 1.0) / (passed + 2.0);
    }

    private static Map<String, Double> rounded(Map<String, Double> rates) {
        return rates.entrySet().stream().collect(Collectors.toMap(Map.Entry::getKey, e -> rounded(e.getValue(), 4)));
    }

    /** People read these figures; the digits beyond say nothing. */
    private static double rounded(double value, int digits) {
        double scale = Math.pow(10, digits);
        return Math.round(value * scale) / scale;
    }

    private Evidence evidence(Instant asOf, CropProfile after, Fitted fitted, List<Evidence.OfCardinals> cardinals) {
        List<Evidence.OfStage> stages = new ArrayList<>();
        for (int k = 0; k < Matrix3.N; k++) {
            Stage stage = Stage.GROWING.get(k);
            double days = after.of(stage).daysAtReference();
            double reach = Math.exp(Z_80 * fitted.spreadOf(k));
            int observations = (int) records.stream()
                    .filter(record -> record.stages().stream().anyMatch(seen -> seen.stage() == stage))
                    .count();
            stages.add(new Evidence.OfStage(
                    stage,
                    inForce.of(stage).daysAtReference(),
                    days,
                    rounded(days / reach, 3),
                    rounded(days * reach, 3),
                    observations,
                    inForce.of(stage).survivalMean(),
                    after.of(stage).survivalMean(),
                    groups(stage).size()));
        }
        int finished = (int) records.stream().filter(BatchRecord::finished).count();
        Evidence figures = new Evidence(
                asOf,
                finished,
                records.size() - finished,
                stages,
                inForce.rateSpread(),
                after.rateSpread(),
                inForce.cellSpread(),
                after.cellSpread(),
                fitted.roundsDays(),
                cardinals,
                groups(
                        BatchRecord::variety,
                        Evidence.OfVariety::new,
                        after.rates().varieties()),
                groups(BatchRecord::site, Evidence.OfSite::new, after.rates().sites()),
                List.of());
        return EvidenceInWords.added(figures);
    }

    private interface OfGroup<T> {
        T of(String code, int batches, double rate);
    }

    private <T> List<T> groups(Function<BatchRecord, String> code, OfGroup<T> make, Map<String, Double> rates) {
        return records.stream()
                .map(code)
                .distinct()
                .sorted()
                .map(each -> make.of(
                        each,
                        (int) records.stream()
                                .filter(record -> code.apply(record).equals(each))
                                .count(),
                        Objects.requireNonNullElse(rates.get(each), 1.0)))
                .toList();
    }
}
