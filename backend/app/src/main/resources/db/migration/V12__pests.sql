-- What a scout found, pest by pest, and on how many traps; null where nobody said.
alter table round_care add column traps integer;
alter table round_care add column thrips integer;
alter table round_care add column aphids integer;
alter table round_care add column whiteflies integer;
alter table round_care add column mites integer;
alter table round_care add column other_pests integer;
