-- How far apart people come round, and how much of the spread between batches is a stage's own: learned, or as is usual.
alter table crop_profile add column rounds_days double precision default 2 not null;
alter table crop_profile add column stage_share double precision default 0.26 not null;
