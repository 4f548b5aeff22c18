package rootcast.app.people.rest;

import io.quarkus.security.identity.AuthenticationRequestContext;
import io.quarkus.security.identity.IdentityProvider;
import io.quarkus.security.identity.IdentityProviderManager;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.security.identity.request.AuthenticationRequest;
import io.quarkus.security.runtime.QuarkusPrincipal;
import io.quarkus.security.runtime.QuarkusSecurityIdentity;
import io.quarkus.vertx.http.runtime.security.ChallengeData;
import io.quarkus.vertx.http.runtime.security.HttpAuthenticationMechanism;
import io.quarkus.vertx.http.runtime.security.HttpSecurityUtils;
import io.smallrye.mutiny.Uni;
import io.vertx.core.http.Cookie;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.Set;
import rootcast.app.people.Asking;
import rootcast.app.people.Credentials;

/**
 * Finds the secret in a request and the identity behind it. An unknown one leaves the request nobody's: what is open to
 * all stays open, and {@link RightsFilter} refuses the rest with a problem.
 */
@ApplicationScoped
class ShownSecrets implements HttpAuthenticationMechanism, IdentityProvider<Shown> {

    private static final String BEARER = "Bearer ";

    @Inject
    Credentials credentials;

    @Override
    public Uni<SecurityIdentity> authenticate(RoutingContext context, IdentityProviderManager providers) {
        String header = context.request().getHeader("Authorization");
        if (header != null) {
            boolean bearer = header.regionMatches(true, 0, BEARER, 0, BEARER.length());
            return ask(
                    providers,
                    context,
                    new Shown(bearer ? header.substring(BEARER.length()).strip() : "", false));
        }
        Cookie cookie = context.request().getCookie(SessionCookie.NAME);
        return cookie == null
                ? Uni.createFrom().nullItem()
                : ask(providers, context, new Shown(cookie.getValue(), true));
    }

    private static Uni<SecurityIdentity> ask(IdentityProviderManager providers, RoutingContext context, Shown shown) {
        return providers.authenticate(HttpSecurityUtils.setRoutingContextAttribute(shown, context));
    }

    @Override
    public Uni<SecurityIdentity> authenticate(Shown shown, AuthenticationRequestContext context) {
        return credentials
                .known(shown.secret())
                .map(asking -> Uni.createFrom().item(identity(shown, asking)))
                .orElseGet(() -> context.runBlocking(() -> identity(shown, credentials.lookUp(shown.secret()))));
    }

    private static SecurityIdentity identity(Shown shown, Asking found) {
        boolean itsWay = shown.isCookie() == (found.kind() == Asking.Kind.PERSON);
        Asking asking = itsWay && found.isSignedIn() ? found : shown.isCookie() ? Asking.NOBODY : Asking.UNKNOWN;
        QuarkusSecurityIdentity.Builder identity =
                QuarkusSecurityIdentity.builder().addAttribute(Asking.ATTRIBUTE, asking);
        return asking.isSignedIn()
                ? identity.setPrincipal(new QuarkusPrincipal(asking.who().name()))
                        .build()
                : identity.setAnonymous(true).build();
    }

    @Override
    public Class<Shown> getRequestType() {
        return Shown.class;
    }

    @Override
    public Uni<ChallengeData> getChallenge(RoutingContext context) {
        return Uni.createFrom().item(new ChallengeData(401, "WWW-Authenticate", "Bearer"));
    }

    @Override
    public Set<Class<? extends AuthenticationRequest>> getCredentialTypes() {
        return Set.of(Shown.class);
    }
}
