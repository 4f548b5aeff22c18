-- Which topic is which sensor, where it hangs and what its numbers mean.
create table sensor (
    code         varchar(32) primary key,
    house        varchar(32) not null references house (code),
    quantity     varchar(32) not null,
    unit         varchar(16) not null,
    topic        varchar(400) unique,
    offset_value double precision not null,
    light_source varchar(32) not null,
    position_no  bigint not null
);

-- A house may now have several sensors of a quantity: the sensor is part of the key, empty for readings without one.
create table sensor_reading (
    house         varchar(32) not null references house (code),
    quantity      varchar(32) not null,
    sensor        varchar(32) not null,
    measured_at   timestamp(6) with time zone not null,
    -- in the unit of the quantity, after the sensor's offset
    reading_value double precision not null,
    -- as it came; null for readings from before this table
    sent_value    double precision,
    sent_unit     varchar(16),
    is_late       boolean not null,
    recorded_at   timestamp(6) with time zone not null,
    position_no   bigint not null,
    primary key (house, quantity, sensor, measured_at)
);
insert into sensor_reading (house, quantity, sensor, measured_at, reading_value, is_late, recorded_at, position_no)
    select house, quantity, '', measured_at, reading_value, false, recorded_at, position_no from reading;
drop table reading;
alter table sensor_reading rename to reading;
create index reading_by_position on reading (position_no);
create index reading_by_record on reading (recorded_at);

-- An hour is the sum of its good readings; left_out says how many are there beside them.
alter table reading_hour add column left_out integer default 0 not null;
alter table reading_hour add column position_no bigint default 0 not null;
-- Its raw readings were put away: the sum stays as it is, for ever.
alter table reading_hour add column settled boolean default false not null;
create index reading_hour_by_position on reading_hour (position_no);

-- What the rules say of the readings that are there. Follows from them, and is made anew when they change.
create table reading_flag (
    id          uuid primary key,
    house       varchar(32) not null references house (code),
    quantity    varchar(32) not null,
    sensor      varchar(32) not null,
    kind        varchar(16) not null,
    flagged_at  timestamp(6) with time zone not null,
    shown_value double precision not null,
    expected    double precision,
    limit_value double precision not null,
    left_out    boolean not null
);
create index reading_flag_by_time on reading_flag (house, quantity, flagged_at);

-- Readings that are kept but are not part of the series: impossible values, second values, times still to come.
create table reading_aside (
    id            uuid primary key,
    house         varchar(32) not null references house (code),
    quantity      varchar(32) not null,
    sensor        varchar(32) not null,
    kind          varchar(16) not null,
    measured_at   timestamp(6) with time zone not null,
    reading_value double precision not null,
    sent_value    double precision,
    sent_unit     varchar(16),
    -- what it was held against: the value that stays, the time it was here, the nearest limit
    expected      double precision,
    recorded_at   timestamp(6) with time zone not null,
    position_no   bigint not null
);
create index reading_aside_by_time on reading_aside (house, quantity, measured_at);

-- A person says that a flag is wrong, or takes that back; the newest counts.
create table flag_overrule (
    position_no bigint not null,
    flag_id     uuid not null,
    house       varchar(32) not null references house (code),
    quantity    varchar(32) not null,
    sensor      varchar(32) not null,
    kind        varchar(16) not null,
    flagged_at  timestamp(6) with time zone not null,
    overruled   boolean not null,
    reason      varchar(500) not null,
    recorded_at timestamp(6) with time zone not null,
    primary key (position_no, flag_id)
);
create index flag_overrule_by_time on flag_overrule (house, quantity, flagged_at);
