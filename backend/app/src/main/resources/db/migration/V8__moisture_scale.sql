-- What a moisture probe shows at levels 1 to 5: five numbers with spaces between, in the sensor's unit.
alter table sensor add column moisture_scale varchar(200);
