-- With how many of its cells through a stage is called complete: learned, or nine in ten.
alter table crop_profile add column called_share double precision default 0.9 not null;
