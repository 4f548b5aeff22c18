package rootcast.crop;

/**
 * A cultivar of a crop.
 *
 * @param crop code of its crop
 * @param name as ICNCP writes it: genus and species, cultivar in single quotes
 */
public record Variety(String code, String crop, String name) {}
