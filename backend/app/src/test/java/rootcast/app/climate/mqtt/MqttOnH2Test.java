package rootcast.app.climate.mqtt;

import io.quarkus.test.junit.QuarkusTest;

@QuarkusTest
class MqttOnH2Test extends MqttContract {}
