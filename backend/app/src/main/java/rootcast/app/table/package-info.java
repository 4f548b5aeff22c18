/** Tables as text, such as a spreadsheet saves them, read line by line. */
package rootcast.app.table;
