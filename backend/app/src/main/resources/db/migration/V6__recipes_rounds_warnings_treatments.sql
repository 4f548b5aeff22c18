-- A changed recipe is a new version; the highest is in force. A crop without a row has common practice for medium mist.
-- The body is JSON in the shape of GET /api/crops/{code}/recipe: it is read and written whole and never searched.
create table crop_recipe (
    crop        varchar(32) not null references crop (code),
    version_no  integer not null,
    body        text not null,
    recorded_at timestamp(6) with time zone not null,
    primary key (crop, version_no)
);

-- The order in which people walk through the houses of a site; houses without a row come last, by their code.
create table walking_order (
    house    varchar(32) primary key references house (code),
    place_no integer not null
);

-- A round item that was done or skipped. What is due is worked out and not stored.
create table round_care (
    id                uuid primary key,
    item              varchar(200) not null,
    task              varchar(24) not null,
    site              varchar(32) not null references site (code),
    house             varchar(32) not null references house (code),
    batch             varchar(64) references batch (id),
    due_on            date not null,
    done              boolean not null,
    happened_at       timestamp(6) with time zone not null,
    recorded_at       timestamp(6) with time zone not null,
    recorded_by       varchar(120) not null,
    reason            varchar(500),
    note              varchar(2000),
    moisture_level    integer check (moisture_level between 1 and 5),
    fungus_gnats      integer,
    shore_flies       integer,
    nitrogen_ppm      double precision,
    -- ids of the ledger entries that it wrote, parted by a space
    entries           varchar(200) not null,
    taken_back_at     timestamp(6) with time zone,
    taken_back_reason varchar(500)
);
create index round_care_by_site on round_care (site, happened_at);
create index round_care_by_item on round_care (item);

create table treatment (
    id              uuid primary key,
    site            varchar(32) not null references site (code),
    house           varchar(32) not null references house (code),
    batch           varchar(64) references batch (id),
    purpose         varchar(20) not null,
    product         varchar(200) not null,
    rate            varchar(500) not null,
    applied_by      varchar(200) not null,
    applied_at      timestamp(6) with time zone not null,
    reentry_hours   double precision not null check (reentry_hours >= 0),
    note            varchar(2000),
    recorded_at     timestamp(6) with time zone not null,
    recorded_by     varchar(120) not null,
    reversed_at     timestamp(6) with time zone,
    reversal_reason varchar(500)
);
create index treatment_by_site on treatment (site, applied_at);

create table warning_log (
    id              uuid primary key,
    kind            varchar(24) not null,
    site            varchar(32) not null references site (code),
    house           varchar(32) not null references house (code),
    batch           varchar(64),
    quantity        varchar(32),
    since_at        timestamp(6) with time zone not null,
    raised_at       timestamp(6) with time zone not null,
    until_at        timestamp(6) with time zone,
    worst           double precision,
    limit_value     double precision,
    unit            varchar(16) not null,
    -- ids parted by a space
    batches         text not null,
    first_seen_at   timestamp(6) with time zone not null,
    acknowledged_at timestamp(6) with time zone,
    acknowledged_by varchar(120),
    acknowledgement varchar(2000)
);
create index warning_by_house on warning_log (house, until_at);

-- What must still be told outside, and what was: a row stays until the other side has taken it.
create table warning_delivery (
    warning      uuid not null references warning_log (id),
    channel      varchar(8) not null,
    due_at       timestamp(6) with time zone not null,
    attempts     integer not null,
    last_error   varchar(500),
    delivered_at timestamp(6) with time zone,
    primary key (warning, channel)
);
