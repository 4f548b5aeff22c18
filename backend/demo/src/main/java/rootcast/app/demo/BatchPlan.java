package rootcast.app.demo;

import rootcast.app.crop.SeedTable;

/**
 * One line of seed/demo/batches.csv.
 *
 * @param key         name within the demo
 * @param toningHouse where it goes once rooted; empty if it stays
 * @param daysAgo     stuck so many days before the demo starts; a weekend moves it to the Friday before
 */
record BatchPlan(
        String key,
        String house,
        String toningHouse,
        String variety,
        String trayFormat,
        int daysAgo,
        int trays,
        Story story) {

    static BatchPlan of(SeedTable.Row row) {
        return new BatchPlan(
                row.text("batch"),
                row.text("house"),
                row.text("toningHouse"),
                row.text("variety"),
                row.text("trayFormat"),
                row.number("daysAgo"),
                row.number("trays"),
                Story.parse(row.text("story")));
    }
}
