package rootcast.app.availability;

import io.quarkus.test.junit.QuarkusTest;

@QuarkusTest
class OrdersOnH2Test extends OrdersContract {}
