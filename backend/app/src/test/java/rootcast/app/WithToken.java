package rootcast.app;

import io.quarkus.test.junit.callback.QuarkusTestBeforeClassCallback;
import io.restassured.RestAssured;
import io.restassured.filter.Filter;

/** Lets every test that says nothing else ask with the token of the tests: what it is about is not who may. */
public final class WithToken implements QuarkusTestBeforeClassCallback {

    /** As {@code application.properties} has it for tests. */
    public static final String TOKEN = "token-of-the-tests";

    public static final String BEARER = "Bearer " + TOKEN;

    @Override
    public void beforeClass(Class<?> testClass) {
        Filter token = (request, response, next) -> {
            if (!request.getHeaders().hasHeaderWithName("Authorization")) {
                request.header("Authorization", BEARER);
            }
            return next.next(request, response);
        };
        RestAssured.replaceFiltersWith(token);
    }
}
