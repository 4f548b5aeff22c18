package rootcast.app.wiring;

/**
 * Says that the business in here is invented. The application has no bean of this type; the demo, a build of its own
 * (docs/decisions/0013), brings one.
 */
public interface Invented {}
