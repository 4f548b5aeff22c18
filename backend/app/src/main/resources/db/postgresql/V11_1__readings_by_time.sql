-- The newest reading of a house and quantity, and those of its last hours, in one look: time before sensor.
alter table reading drop constraint sensor_reading_pkey;
alter table reading add primary key (house, quantity, measured_at, sensor);

insert into business_code select substr(md5(random()::text || clock_timestamp()::text), 1, 8);
