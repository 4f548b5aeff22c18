-- Why a reading was not taken, as a code and its values (JSON), so that a screen says it in its reader's words. The English
-- sentence stays beside it; rows from before have nothing else.
alter table ingest_example add column why_code varchar(64);
alter table ingest_example add column why_values varchar(1000);
