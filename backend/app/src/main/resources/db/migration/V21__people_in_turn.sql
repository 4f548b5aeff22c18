-- The one row that whoever changes people or keys locks. Rows of people cannot serve: before the first there is none.
create table people_turn (
    id integer primary key check (id = 1)
);
insert into people_turn (id) values (1);
