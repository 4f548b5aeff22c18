-- How batches of a crop vary, how they are looked at and how well the crop's days are known: learned, or as is usual.
-- What was learned before is taken to be known to a twentieth, what was stated as far as statements usually go.
alter table crop_profile add column rounds_days double precision default 2 not null;
alter table crop_profile add column stage_share double precision default 0.26 not null;
alter table crop_profile add column cells_differ double precision default 0.3 not null;
alter table crop_profile add column days_doubt double precision default 0.3 not null;
alter table crop_profile add column entered_share double precision default 0.5 not null;
update crop_profile set days_doubt = 0.05 where origin = 'learned';
