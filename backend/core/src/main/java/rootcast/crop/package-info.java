/** What is grown and in what: crop with its profile, variety, tray format. */
@NullMarked
package rootcast.crop;

import org.jspecify.annotations.NullMarked;
