package rootcast.outlook;

import java.util.Arrays;

/**
 * What is believed of a batch's rate multiplier in each of its stages.
 *
 * <p>In stage k the batch runs at ln M_k = c + e_k: c is the batch's own, the e_k differ from stage to stage. Both are
 * normal around 0; of the crop's variance of ln M the share {@value #OWN_SHARE} is that of e (common practice, no source).
 * Before anything has been seen a batch counts as running alike in all stages, which is the wider distribution. What is seen of a
 * stage is a likelihood L_k of its own M_k. Then
 *
 * <ul>
 *   <li>c has the density prior(c) · Π m_k(c), with the message m_k(c) = ∫ N(u − c) L_k(u) du;
 *   <li>ln M_k has the density L_k(u) · ∫ N(u − c) prior(c) Π_(j≠k) m_j(c) dc.
 * </ul>
 *
 * <p>All on one fixed grid of {@value #NODES} nodes over ±4.27 prior standard deviations, by the trapezoid rule.
 *
 * <p>Source: Pearl 1988, Probabilistic Reasoning in Intelligent Systems, §4.2 (messages on a tree); Gelman, Carlin, Stern,
 * Dunson, Vehtari and Rubin 2013, Bayesian Data Analysis, 3rd ed., §10.1 (grid).
 */
final class StageRates {

    static final double OWN_SHARE = 0.26;

    private static final int NODES = 161;
    private static final double RANGE_SD = 4.27;
    private static final double STEP_SD = 2 * RANGE_SD / (NODES - 1);
    private static final double[] PRIOR = new double[NODES];

    /** N(u − c) by the distance in steps, as far as it is worth while. */
    private static final double[] OWN = new double[(int) Math.ceil(5 * Math.sqrt(OWN_SHARE) / STEP_SD)];

    static {
        Arrays.setAll(PRIOR, i -> Math.exp(-square((i * STEP_SD - RANGE_SD)) / 2 / (1 - OWN_SHARE)));
        Arrays.setAll(OWN, distance -> Math.exp(-square(distance * STEP_SD) / 2 / OWN_SHARE));
    }

    private final RateBelief[] ofStage;

    private StageRates(RateBelief[] ofStage) {
        this.ofStage = ofStage;
    }

    private static double square(double x) {
        return x * x;
    }

    /** After what has been seen of the batch; without evidence, or without spread, the prior to the last bit. */
    static StageRates given(double rateSpread, RateEvidence evidence) {
        if (evidence.isEmpty() || rateSpread == 0) {
            RateBelief prior = RateBelief.prior(rateSpread);
            return new StageRates(new RateBelief[] {prior, prior, prior});
        }
        double[][] likelihood = likelihoods(rateSpread, evidence);
        double[][] message = new double[StagePath.STAGES][];
        for (int stage = 0; stage < StagePath.STAGES; stage++) {
            message[stage] = evidence.isOf(stage) ? blurred(likelihood[stage]) : null;
        }
        RateBelief[] beliefs = new RateBelief[StagePath.STAGES];
        for (int stage = 0; stage < StagePath.STAGES; stage++) {
            double[] density = blurred(batchWithout(stage, message));
            if (message[stage] != null) {
                for (int i = 0; i < NODES; i++) {
                    density[i] *= likelihood[stage][i];
                }
            }
            beliefs[stage] = RateBelief.of(new GridDistribution(density, -RANGE_SD, STEP_SD), rateSpread);
        }
        return new StageRates(beliefs);
    }

    private static double[][] likelihoods(double rateSpread, RateEvidence evidence) {
        double[][] logs = new double[StagePath.STAGES][NODES];
        double[] most = new double[StagePath.STAGES];
        Arrays.fill(most, Double.NEGATIVE_INFINITY);
        for (int i = 0; i < NODES; i++) {
            double[] atNode = evidence.logLikelihoods(Math.exp(rateSpread * (i * STEP_SD - RANGE_SD)));
            for (int stage = 0; stage < StagePath.STAGES; stage++) {
                logs[stage][i] = atNode[stage];
                most[stage] = Math.max(most[stage], atNode[stage]);
            }
        }
        for (int stage = 0; stage < StagePath.STAGES; stage++) {
            for (int i = 0; i < NODES; i++) {
                logs[stage][i] = Math.exp(logs[stage][i] - most[stage]);
            }
        }
        return logs;
    }

    /** The density of c from all stages but one. */
    private static double[] batchWithout(int left, double[][] message) {
        double[] density = PRIOR.clone();
        for (int stage = 0; stage < StagePath.STAGES; stage++) {
            if (stage != left && message[stage] != null) {
                for (int i = 0; i < NODES; i++) {
                    density[i] *= message[stage][i];
                }
            }
        }
        return density;
    }

    private static double[] blurred(double[] sharp) {
        double[] blurred = new double[NODES];
        for (int i = 0; i < NODES; i++) {
            double sum = OWN[0] * sharp[i];
            for (int distance = 1; distance < OWN.length; distance++) {
                double below = i >= distance ? sharp[i - distance] : 0;
                double above = i + distance < NODES ? sharp[i + distance] : 0;
                sum += OWN[distance] * (below + above);
            }
            blurred[i] = sum;
        }
        return blurred;
    }

    RateBelief of(int stage) {
        return ofStage[stage];
    }

    /** The multiplier of each stage at a node of its belief. */
    double[] atNode(int node) {
        double[] multipliers = new double[StagePath.STAGES];
        Arrays.setAll(multipliers, stage -> ofStage[stage].multiplier(node));
        return multipliers;
    }
}
