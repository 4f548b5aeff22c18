-- What a house's medium was or will be set to from a moment on; before the first change the house's own set-point holds.
-- A change to the same moment is a new row: the one recorded last holds.
create table house_setpoint (
    position_no bigint primary key,
    house       varchar(32) not null references house (code),
    from_at     timestamp(6) with time zone not null,
    medium_c    double precision,
    recorded_at timestamp(6) with time zone not null
);
create index house_setpoint_of_house on house_setpoint (house, from_at);
