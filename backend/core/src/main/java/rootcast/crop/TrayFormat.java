package rootcast.crop;

import rootcast.saying.Fault;
import rootcast.saying.FaultyValue;

/**
 * A tray with a number of cells.
 *
 * @param cells     cells that can be stuck
 * @param saleCount good plants that a sold tray must hold; at most {@code cells}
 * @param lengthMm  outside length, mm
 * @param widthMm   outside width, mm
 */
public record TrayFormat(String code, int cells, int saleCount, int lengthMm, int widthMm) {

    private static final int MOST_CELLS = 2_000;
    private static final int MOST_MM = 5_000;

    public TrayFormat {
        if (cells < 1 || cells > MOST_CELLS) {
            throw new FaultyValue("cells", cells, Fault.BETWEEN, 1, MOST_CELLS);
        }
        if (saleCount < 1 || saleCount > cells) {
            throw new FaultyValue("saleCount", saleCount, Fault.BETWEEN, 1, cells);
        }
        outsideSize("lengthMm", lengthMm);
        outsideSize("widthMm", widthMm);
    }

    private static void outsideSize(String field, int sizeMm) {
        if (sizeMm < 1 || sizeMm > MOST_MM) {
            throw new FaultyValue(field, sizeMm, Fault.BETWEEN, 1, MOST_MM);
        }
    }
}
