/**
 * The one place that turns a refusal or a fault into an answer: RFC 9457 bodies that say what was asked, what was
 * allowed and what to do. {@link rootcast.app.problem.RefusalTable} is the table.
 */
package rootcast.app.problem;
