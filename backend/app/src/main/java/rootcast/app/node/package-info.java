/** What several nodes over one database settle among them: who does what must be done by one of them. */
@org.jspecify.annotations.NullMarked
package rootcast.app.node;
