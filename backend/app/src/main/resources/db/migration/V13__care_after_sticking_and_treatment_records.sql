-- What a check of the box and a measurement of the medium's salts found.
alter table round_care add column ec_ms_per_cm double precision;
alter table round_care add column box_condition varchar(16);
alter table round_care add column box_c double precision;
alter table round_care add column standby_hours double precision;

-- What a record of a treatment may have to say; local rules decide, so each may be left out.
alter table treatment add column target varchar(200);
alter table treatment add column total_used varchar(200);
alter table treatment add column area_m2 double precision;
alter table treatment add column registration_number varchar(100);
alter table treatment add column licence_number varchar(100);
alter table treatment add column weather varchar(200);
