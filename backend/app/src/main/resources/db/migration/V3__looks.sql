-- A look at some cells for a stage: how many were looked at, how many of those had reached it.
alter table ledger_entry add column looked_cells integer;
alter table ledger_entry add column reached_cells integer;
