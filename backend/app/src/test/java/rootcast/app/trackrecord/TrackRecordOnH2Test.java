package rootcast.app.trackrecord;

import io.quarkus.test.junit.QuarkusTest;

@QuarkusTest
class TrackRecordOnH2Test extends TrackRecordContract {}
