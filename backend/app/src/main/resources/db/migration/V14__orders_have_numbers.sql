-- What people call an order. Given in the order in which orders were placed, to those from before too.
alter table customer_order add column order_no bigint;
update customer_order
set order_no = (select count(*) from customer_order older where older.position_no <= customer_order.position_no);
alter table customer_order alter column order_no set not null;
alter table customer_order add constraint customer_order_by_no unique (order_no);
