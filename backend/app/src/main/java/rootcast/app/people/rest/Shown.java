package rootcast.app.people.rest;

import io.quarkus.security.identity.request.BaseAuthenticationRequest;

/** A secret as a request shows it: in the cookie of a session, or as a bearer token. */
final class Shown extends BaseAuthenticationRequest {

    private final String secret;
    private final boolean cookie;

    Shown(String secret, boolean cookie) {
        this.secret = secret;
        this.cookie = cookie;
    }

    String secret() {
        return secret;
    }

    boolean isCookie() {
        return cookie;
    }
}
