-- Where batches of a house usually go on to; a change is a new row, and the one recorded last holds.
create table house_usual_move (
    position_no bigint primary key,
    house       varchar(32) not null references house (code),
    -- CALLUS or ROOT; both null: they stay until they ship
    reached     varchar(16),
    next_house  varchar(32) references house (code),
    recorded_at timestamp(6) with time zone not null
);
