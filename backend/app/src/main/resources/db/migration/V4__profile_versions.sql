-- A profile is a version of its crop: entered by somebody or learned from batches, and in force once it was adopted.
alter table crop_profile add column origin varchar(8) default 'entered' not null;
alter table crop_profile add column cell_spread double precision default 0.12 not null;
-- What a learned version rests on, as it was told, in JSON.
alter table crop_profile add column evidence text;

create table crop_profile_rate (
    crop       varchar(32) not null,
    version_no integer not null,
    -- variety or site
    kind       varchar(8) not null,
    code       varchar(32) not null,
    factor     double precision not null,
    primary key (crop, version_no, kind, code),
    foreign key (crop, version_no) references crop_profile (crop, version_no)
);

-- Only added to: the last row of a crop says which version is in force, the last before an instant which one was then.
create table crop_profile_adoption (
    crop       varchar(32) not null,
    seq        integer not null,
    version_no integer not null,
    pinned     boolean not null,
    adopted_at timestamp(6) with time zone not null,
    primary key (crop, seq),
    foreign key (crop, version_no) references crop_profile (crop, version_no)
);

-- Until now the highest version was in force from the moment it was stored.
insert into crop_profile_adoption (crop, seq, version_no, pinned, adopted_at)
select crop, version_no, version_no, false, recorded_at from crop_profile;
