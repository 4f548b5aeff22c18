-- A key belongs to whoever used it: the same key from two people is two keys. The answer keeps the position of its
-- commit. Old keys are purged (Once.purgeOldKeys).
create table write_answer (
    sender      varchar(120) not null,
    once_key    varchar(200) not null,
    fingerprint varchar(64) not null,
    status      integer not null,
    body        text not null,
    position_no bigint not null,
    recorded_at timestamp(6) with time zone not null,
    primary key (sender, once_key)
);
insert into write_answer (sender, once_key, fingerprint, status, body, position_no, recorded_at)
    select 'rootcast', once_key, fingerprint, status, body, 0, recorded_at from written_once;
drop table written_once;
create index write_answer_by_age on write_answer (recorded_at);
