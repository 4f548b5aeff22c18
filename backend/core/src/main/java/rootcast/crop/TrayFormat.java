package rootcast.crop;

/**
 * A tray with a number of cells.
 *
 * @param cells     cells that can be stuck
 * @param saleCount good plants that a sold tray must hold; at most {@code cells}
 * @param lengthMm  outside length, mm
 * @param widthMm   outside width, mm
 */
public record TrayFormat(String code, int cells, int saleCount, int lengthMm, int widthMm) {

    public TrayFormat {
        if (cells < 1 || cells > 2_000) {
            throw new IllegalArgumentException("cells %d must lie between 1 and 2000".formatted(cells));
        }
        if (saleCount < 1 || saleCount > cells) {
            throw new IllegalArgumentException(
                    "sale count %d must lie between 1 and the %d cells".formatted(saleCount, cells));
        }
        if (lengthMm < 1 || lengthMm > 5_000 || widthMm < 1 || widthMm > 5_000) {
            throw new IllegalArgumentException(
                    "outside size %d × %d mm must lie between 1 and 5000 mm".formatted(lengthMm, widthMm));
        }
    }
}
