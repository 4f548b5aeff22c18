/**
 * Who is asking, and what they may do.
 *
 * <p>{@link rootcast.app.people.Needs} on each endpoint says which {@link rootcast.app.people.Right} it takes;
 * {@link rootcast.app.people.Rights} asks for it at a site where the use case starts; {@link rootcast.app.people.Caller}
 * tells readers which sites to show. Decision: docs/decisions/0011-people-and-rights.md.
 */
package rootcast.app.people;
