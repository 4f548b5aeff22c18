package rootcast.app.people.rest;

import io.vertx.core.http.HttpServerRequest;
import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;

/**
 * What browsers are told to refuse. Everything comes from here: no script, style, font or connection of another host, no
 * script in a page's text, no frame around it.
 *
 * <p>Sources: W3C Content Security Policy Level 3, Referrer Policy, Permissions Policy; RFC 6797 (HSTS).
 */
@ApplicationScoped
class SecurityHeaders {

    /** Styles in the page's text: Vaadin's elements put style elements into their shadow roots (docs/decisions/0011). */
    private static final String CONTENT = String.join(
            "; ",
            "default-src 'self'",
            "script-src 'self'",
            "style-src 'self' 'unsafe-inline'",
            "img-src 'self' data: blob:",
            "font-src 'self' data:",
            "connect-src 'self'",
            "worker-src 'self' blob:",
            "manifest-src 'self'",
            "object-src 'none'",
            "base-uri 'none'",
            "form-action 'self'",
            "frame-ancestors 'none'");

    private static final String PERMISSIONS =
            "camera=(self), microphone=(), geolocation=(), payment=(), usb=(), serial=(), bluetooth=()";

    void routes(@Observes Router router) {
        router.route("/*").order(Integer.MIN_VALUE).handler(SecurityHeaders::add);
    }

    private static void add(RoutingContext context) {
        HttpServerRequest request = context.request();
        context.response()
                .putHeader("Content-Security-Policy", CONTENT)
                .putHeader("X-Content-Type-Options", "nosniff")
                .putHeader("Referrer-Policy", "same-origin")
                .putHeader("Permissions-Policy", PERMISSIONS)
                .putHeader("X-Frame-Options", "DENY")
                .putHeader("Cross-Origin-Opener-Policy", "same-origin")
                .putHeader("Cross-Origin-Resource-Policy", "same-origin");
        if ("https".equals(request.scheme())) {
            context.response().putHeader("Strict-Transport-Security", "max-age=31536000");
        }
        context.next();
    }
}
