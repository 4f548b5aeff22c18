/** Who is asking. Until people sign in, scripts may show a token and nobody must. */
package rootcast.app.people;
