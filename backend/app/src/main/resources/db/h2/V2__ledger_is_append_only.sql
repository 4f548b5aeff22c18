-- The port has no update or delete; the database refuses them too (docs/decisions/0002).
create trigger ledger_entry_is_final before update, delete on ledger_entry
    for each row call 'rootcast.app.ledger.store.AppendOnlyTrigger';
create trigger posting_is_final before update, delete on posting
    for each row call 'rootcast.app.ledger.store.AppendOnlyTrigger';
