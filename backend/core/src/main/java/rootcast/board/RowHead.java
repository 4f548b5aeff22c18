package rootcast.board;

import rootcast.availability.Cell;

/**
 * What a row is about.
 *
 * @param crop code
 */
public record RowHead(Cell cell, String varietyName, String crop, String cropName) {}
