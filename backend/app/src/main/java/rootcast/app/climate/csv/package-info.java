/** Readings of the past from a table, looked at before they are taken. */
package rootcast.app.climate.csv;
