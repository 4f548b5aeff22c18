-- Position of the newest care, treatment or recipe: with the ledger and the readings all that rounds and warnings rest on. Who looked
-- when it was the same need not look again.
alter table fact_head add column care_position bigint default 0 not null;
