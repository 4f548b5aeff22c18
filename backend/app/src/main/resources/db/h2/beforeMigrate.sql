-- The database is asked to write every commit through to the disk, and each statement of a migration is a commit. Here they may
-- wait for each other: if the process dies, statements and the history of migrations are lost together from the end.
set write_delay 1000;
