/** Places and their calendars: a site with one time zone, its houses, and the ISO 8601 weeks it ships in. */
@NullMarked
package rootcast.site;

import org.jspecify.annotations.NullMarked;
