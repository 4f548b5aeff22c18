-- The port has no update or delete; the database refuses them too (docs/decisions/0002).
create function refuse_change() returns trigger language plpgsql as $$
begin
    raise exception 'the ledger is append-only: % on % refused', tg_op, tg_table_name;
end $$;

create trigger ledger_entry_is_final before update or delete on ledger_entry
    for each row execute function refuse_change();
create trigger ledger_entry_is_kept before truncate on ledger_entry
    for each statement execute function refuse_change();
create trigger posting_is_final before update or delete on posting
    for each row execute function refuse_change();
create trigger posting_is_kept before truncate on posting
    for each statement execute function refuse_change();
