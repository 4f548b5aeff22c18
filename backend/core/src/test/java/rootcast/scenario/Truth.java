package rootcast.scenario;

/**
 * How an invented business truly is: what {@link TrueBusiness} makes its batches, houses and people of.
 *
 * <p>The figures are ours and say what a business could be like; none of them was chosen by what the model makes of it.
 *
 * @param name     in reports
 * @param response how development follows temperature
 * @param floor    what becomes of houses and plants
 * @param people   how batches are looked at and written down
 * @param known    what the profile is when batches are forecast
 */
record Truth(String name, Response response, Rates rates, Floor floor, People people, Known known) {

    enum Response {
        WANG_ENGEL,
        /** The model's own form, with other cardinals than the profile's. */
        BETA,
        /** Straight up to an optimum, level from there. */
        PLATEAU
    }

    /**
     * @param batch  standard deviation of ln(rate) between batches
     * @param stage  the same between the stages of a batch, each for itself
     * @param tray   the same between the trays of a batch, alike in all stages
     * @param season by how much ln(rate) changes in 120 days
     */
    record Rates(double batch, double stage, double tray, double season) {}

    /**
     * @param movedShare share of batches carried to another house that nobody recorded
     * @param lossShare  share of batches that lose 10 to 30 % of their plants at once
     * @param sickShare  share of lots, four batches of one day, that lose 20 to 50 % together
     * @param coldSnaps  whether all houses fall by 4 to 7 °C for two to four days, once in a month or so
     * @param driftC     how far every fourth house's probe drifts in 60 days until it is set right again
     */
    record Floor(double movedShare, double lossShare, double sickShare, boolean coldSnaps, double driftC) {}

    /**
     * @param leastDays    days between the rounds of a batch, the same for all its rounds, evenly between this and
     * @param mostDays     this
     * @param onMondays    on Mondays only instead
     * @param cells        cells looked at
     * @param calledAt     share of these at which a stage is called complete
     * @param lateDays     it is entered up to so long after that, evenly, with the time of the entry
     * @param missingShare share of stages that nobody enters, but for ready
     * @param wrongShare   share of looks that were of another batch, and of entries dated three days early
     */
    record People(
            double leastDays,
            double mostDays,
            boolean onMondays,
            int cells,
            double calledAt,
            double lateDays,
            double missingShare,
            double wrongShare) {

        static final People USUAL = new People(1, 3, false, 40, 0.9, 0, 0, 0);

        People everyDays(double least, double most) {
            return new People(least, most, onMondays, cells, calledAt, lateDays, missingShare, wrongShare);
        }

        People onMondaysOnly() {
            return new People(7, 7, true, cells, calledAt, lateDays, missingShare, wrongShare);
        }

        People calling(int cells, double calledAt, double lateDays) {
            return new People(leastDays, mostDays, onMondays, cells, calledAt, lateDays, missingShare, wrongShare);
        }

        People writing(double missingShare, double wrongShare) {
            return new People(leastDays, mostDays, onMondays, cells, calledAt, lateDays, missingShare, wrongShare);
        }
    }

    /**
     * @param daysFactor days of the stated profile over the true ones
     * @param finished   batches that were finished and learned from before; 0 if the stated profile is in force
     */
    record Known(double daysFactor, int finished) {

        static final Known SIXTY_FINISHED = new Known(1.25, 60);
    }

    private static final Rates USUAL_RATES = new Rates(0.09, 0.035, 0, 0);
    private static final Floor QUIET = new Floor(0, 0, 0, false, 0);

    static final Truth USUAL =
            new Truth("usual", Response.WANG_ENGEL, USUAL_RATES, QUIET, People.USUAL, Known.SIXTY_FINISHED);

    Truth with(String name, Response response) {
        return new Truth(name, response, rates, floor, people, known);
    }

    Truth with(String name, Rates rates) {
        return new Truth(name, response, rates, floor, people, known);
    }

    Truth with(String name, Floor floor) {
        return new Truth(name, response, rates, floor, people, known);
    }

    Truth with(String name, People people) {
        return new Truth(name, response, rates, floor, people, known);
    }

    Truth with(String name, Known known) {
        return new Truth(name, response, rates, floor, people, known);
    }
}
