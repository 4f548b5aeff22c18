-- Facts and nothing else: what an outlook or a board shows is computed from these tables.
-- Portable between H2 and PostgreSQL; what is not stands in db/h2 and db/postgresql.

-- The one row that every writer locks. It hands out positions inside the writing transaction, so that position order
-- is commit order (docs/decisions/0001).
create table fact_head (
    id             integer primary key check (id = 1),
    position_no    bigint not null,
    -- position of the newest site, house, tray format, crop or variety
    setup_position bigint not null
);
insert into fact_head (id, position_no, setup_position) values (1, 0, 0);

create table site (
    code        varchar(32) primary key,
    name        varchar(120) not null,
    time_zone   varchar(64) not null,
    ship_day    varchar(9) not null,
    position_no bigint not null
);

create table house (
    code              varchar(32) primary key,
    site              varchar(32) not null references site (code),
    name              varchar(120) not null,
    medium_setpoint_c double precision,
    position_no       bigint not null
);

create table tray_format (
    code        varchar(32) primary key,
    cells       integer not null check (cells between 1 and 2000),
    sale_count  integer not null,
    length_mm   integer not null,
    width_mm    integer not null,
    position_no bigint not null,
    check (sale_count between 1 and cells)
);

create table crop (
    code        varchar(32) primary key,
    name        varchar(120) not null,
    position_no bigint not null
);

-- A changed profile is a new version; the highest adopted one is in force.
create table crop_profile (
    crop        varchar(32) not null references crop (code),
    version_no  integer not null,
    rate_spread double precision not null,
    hold_days   integer not null,
    note        varchar(2000),
    recorded_at timestamp(6) with time zone not null,
    primary key (crop, version_no)
);

create table crop_profile_stage (
    crop              varchar(32) not null,
    version_no        integer not null,
    stage             varchar(8) not null,
    days_at_reference double precision not null,
    form              varchar(8) not null,
    min_c             double precision not null,
    optimum_c         double precision not null,
    max_c             double precision not null,
    reference_c       double precision not null,
    survival_mean     double precision not null,
    survival_weight   double precision not null,
    source            varchar(4000),
    primary key (crop, version_no, stage),
    foreign key (crop, version_no) references crop_profile (crop, version_no)
);

create table variety (
    code        varchar(32) primary key,
    crop        varchar(32) not null references crop (code),
    name        varchar(160) not null,
    position_no bigint not null
);

create table batch (
    id          varchar(64) primary key,
    site        varchar(32) not null references site (code),
    variety     varchar(32) not null references variety (code),
    tray_format varchar(32) not null references tray_format (code),
    stuck_at    timestamp(6) with time zone not null
);
create index batch_by_cell on batch (variety, tray_format, site);

create table ledger_entry (
    position_no    bigint primary key,
    id             uuid not null unique,
    batch          varchar(64) not null references batch (id),
    kind           varchar(16) not null,
    happened_at    timestamp(6) with time zone not null,
    recorded_at    timestamp(6) with time zone not null,
    recorded_by    varchar(120) not null,
    house          varchar(32) references house (code),
    trays          integer,
    plants         integer,
    cause          varchar(24),
    sampled_trays  integer,
    sampled_cells  integer,
    blanks         integer,
    stage          varchar(8),
    reverses       uuid unique references ledger_entry (id),
    reason         varchar(500),
    order_id       uuid,
    order_line     integer,
    note           varchar(2000)
);
create index ledger_entry_by_batch on ledger_entry (batch, position_no);

create table posting (
    position_no  bigint not null references ledger_entry (position_no),
    seq          integer not null,
    batch        varchar(64) not null references batch (id),
    account      varchar(8) not null,
    house        varchar(32),
    cause        varchar(24),
    plants       bigint not null,
    effective_at timestamp(6) with time zone not null,
    primary key (position_no, seq)
);
create index posting_by_batch on posting (batch);

create table reading (
    house         varchar(32) not null references house (code),
    quantity      varchar(32) not null,
    measured_at   timestamp(6) with time zone not null,
    reading_value double precision not null,
    recorded_at   timestamp(6) with time zone not null,
    position_no   bigint not null,
    primary key (house, quantity, measured_at)
);
create index reading_by_position on reading (position_no);

-- Sum of the hour's readings in millionths of the unit: whole numbers add up to the same whatever order they come in.
create table reading_hour (
    house       varchar(32) not null references house (code),
    quantity    varchar(32) not null,
    hour_start  timestamp(6) with time zone not null,
    total_micro bigint not null,
    readings    integer not null,
    primary key (house, quantity, hour_start)
);

create table customer_order (
    id                uuid primary key,
    customer          varchar(200) not null,
    note              varchar(2000),
    confidence        double precision not null,
    recorded_at       timestamp(6) with time zone not null,
    position_no       bigint not null unique,
    released_at       timestamp(6) with time zone,
    released_position bigint unique
);

create table order_line (
    order_id    uuid not null references customer_order (id),
    line_no     integer not null,
    variety     varchar(32) not null references variety (code),
    tray_format varchar(32) not null references tray_format (code),
    site        varchar(32) not null references site (code),
    ship_on     date not null,
    trays       integer not null check (trays > 0),
    primary key (order_id, line_no)
);
create index order_line_by_cell on order_line (variety, tray_format, site);

-- The answer to a write, kept under the key its sender made, so that sending it twice does it once.
create table written_once (
    once_key    varchar(200) primary key,
    fingerprint varchar(64) not null,
    status      integer not null,
    body        text not null,
    recorded_at timestamp(6) with time zone not null
);
