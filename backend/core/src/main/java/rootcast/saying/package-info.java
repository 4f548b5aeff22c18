/**
 * What a reader is to be told, as a code and named values: a screen says it in the reader's own language, units and time.
 * The English sentence beside it is for machines and logs.
 */
@NullMarked
package rootcast.saying;

import org.jspecify.annotations.NullMarked;
