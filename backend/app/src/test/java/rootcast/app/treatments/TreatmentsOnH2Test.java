package rootcast.app.treatments;

import io.quarkus.test.junit.QuarkusTest;

@QuarkusTest
class TreatmentsOnH2Test extends TreatmentsContract {}
