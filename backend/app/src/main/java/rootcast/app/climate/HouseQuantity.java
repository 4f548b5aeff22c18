package rootcast.app.climate;

import rootcast.climate.Quantity;

/** What one hourly series is of. */
public record HouseQuantity(String house, Quantity quantity) {}
