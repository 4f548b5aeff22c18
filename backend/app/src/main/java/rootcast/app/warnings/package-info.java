/**
 * Keeps the log of warnings and tells people: {@link rootcast.app.warnings.WatchHouses} looks at every house and writes down
 * what changed, {@link rootcast.app.warnings.SendWarnings} sends what must go out until the other side has taken it.
 */
package rootcast.app.warnings;
