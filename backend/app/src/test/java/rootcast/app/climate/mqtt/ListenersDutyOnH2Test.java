package rootcast.app.climate.mqtt;

import io.quarkus.test.junit.QuarkusTest;

@QuarkusTest
class ListenersDutyOnH2Test extends ListenersDutyContract {}
