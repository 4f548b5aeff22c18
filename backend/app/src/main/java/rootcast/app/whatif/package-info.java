/** What would move if a house were set to another temperature or a batch stood elsewhere. Nothing is stored. */
package rootcast.app.whatif;
