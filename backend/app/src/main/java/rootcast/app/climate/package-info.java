/** What sensors report: taken in, kept once, summed by hour. */
package rootcast.app.climate;
