-- From now on an acknowledged write is on the disk again.
set write_delay 0;
checkpoint;
