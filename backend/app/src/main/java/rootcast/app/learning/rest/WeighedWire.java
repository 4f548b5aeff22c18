package rootcast.app.learning.rest;

import java.util.List;
import rootcast.app.learning.WeighVersion;
import rootcast.app.whatif.rest.WhatIfWire;

/**
 * What adopting a version would change.
 *
 * @param version the one asked about
 * @param inForce the one it is held against
 * @param today   batches of the crop, weeks of their rows and promises, as things stand and as they would
 * @param past    how far off past batches would have been foretold
 */
record WeighedWire(int version, int inForce, WhatIfWire.Answered today, Past past) {

    /**
     * @param heldOut whether each batch was foretold by a profile learned without it; false for a version that somebody entered
     * @param batches that were seen ready and could be foretold
     */
    record Past(boolean heldOut, int batches, List<LeadErrors> leads) {}

    /**
     * @param leadDays days before a batch was ready
     * @param n        batches foretold from then
     * @param inForceMaeDays mean absolute error with the profile in force
     * @param versionMaeDays mean absolute error with the version asked about
     * @param inForceBiasDays mean error with the profile in force; over 0 if batches were later than foretold
     * @param versionBiasDays the same with the version asked about
     */
    record LeadErrors(
            int leadDays,
            int n,
            double inForceMaeDays,
            double versionMaeDays,
            double inForceBiasDays,
            double versionBiasDays) {

        static LeadErrors of(WeighVersion.Lead lead) {
            return new LeadErrors(
                    lead.leadDays(),
                    lead.before().n(),
                    lead.before().maeDays(),
                    lead.after().maeDays(),
                    lead.before().biasDays(),
                    lead.after().biasDays());
        }
    }

    static WeighedWire of(int version, WeighVersion.Weighed weighed, double confidence) {
        return new WeighedWire(
                version,
                weighed.inForce(),
                WhatIfWire.of(weighed.today(), confidence),
                new Past(
                        weighed.heldOut(),
                        weighed.batches(),
                        weighed.leads().stream().map(LeadErrors::of).toList()));
    }
}
