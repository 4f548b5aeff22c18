-- What at most one of several nodes does at a time, and until when who holds it, by the clock of the database.
create table node_duty (
    duty       varchar(32) primary key,
    holder     varchar(40) not null,
    held_until timestamp(6) with time zone not null
);
insert into node_duty values ('listen-mqtt', '', timestamp with time zone '2000-01-01 00:00:00+00:00');
insert into node_duty values ('watch-houses', '', timestamp with time zone '2000-01-01 00:00:00+00:00');
insert into node_duty values ('purge-readings', '', timestamp with time zone '2000-01-01 00:00:00+00:00');

-- One row: what the business is called at a broker that it may share with others.
create table business_code (code varchar(16) primary key);

-- What came in since this table was made, by way in and by what became of it.
create table ingest_count (
    way   varchar(8) not null,
    kind  varchar(32) not null,
    total bigint not null,
    primary key (way, kind)
);

-- The last of each fault.
create table ingest_example (
    id          uuid primary key,
    way         varchar(8) not null,
    kind        varchar(32) not null,
    what        varchar(210) not null,
    reason      varchar(500) not null,
    happened_at timestamp(6) with time zone not null
);
create index ingest_example_by_kind on ingest_example (way, kind, happened_at);

-- Topics that no sensor has: sensors yet to be set up.
create table unmapped_topic (
    topic        varchar(400) primary key,
    messages     bigint not null,
    last_text    varchar(210) not null,
    last_seen_at timestamp(6) with time zone not null
);

-- Messages that could not be stored although the database works: kept here before the broker is told that they are.
create table refused_message (
    id         uuid primary key,
    topic      varchar(400) not null,
    payload    varchar(4100) not null,
    reason     varchar(500) not null,
    arrived_at timestamp(6) with time zone not null
);
create index refused_message_by_time on refused_message (arrived_at);

-- Numbers under which the broker gave us messages without a time of their own, one row a transaction: what it gives
-- again under the same number is the same message.
create table mqtt_taken (
    batch_no bigint primary key,
    messages text not null
);

-- A delivery is claimed by one node, sent, and marked; a node that dies lets its claim run out.
alter table warning_delivery add column claimed_by varchar(40);
alter table warning_delivery add column claimed_until timestamp(6) with time zone;

alter table flag_overrule rename to flag_override;
alter table flag_override rename column overruled to overridden;
alter index flag_overrule_by_time rename to flag_override_by_time;
