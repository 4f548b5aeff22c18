/**
 * Yesterday's predictions held against what happened: every finished batch foretold again from the tables.
 */
package rootcast.app.trackrecord;
