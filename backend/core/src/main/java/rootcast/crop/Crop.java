package rootcast.crop;

/**
 * A kind of plant that is propagated in one way.
 *
 * @param name botanical or common name as the business writes it
 */
public record Crop(String code, String name, CropProfile profile) {}
