-- What the record of a crop's finished batches says of the dates and ranges of a version of its profile, by lead. Only added to: of a
-- version the rows of the highest seq count, the highest known by an instant did then.
create table crop_calibration (
    crop         varchar(32) not null,
    version_no   integer not null,
    seq          integer not null,
    lead_days    double precision not null,
    early        double precision not null,
    middle       double precision not null,
    late         double precision not null,
    batches      double precision not null,
    -- Position of the newest entry of a batch that was ready when it was made.
    newest_entry bigint not null,
    known_at     timestamp(6) with time zone not null,
    primary key (crop, version_no, seq, lead_days),
    foreign key (crop, version_no) references crop_profile (crop, version_no)
);
insert into node_duty values ('calibrate-crops', '', timestamp with time zone '2000-01-01 00:00:00+00:00');
