-- What was bought for a build. Everything that happens to an order is one row: no row is ever changed or removed, and what was told by mistake is withdrawn by another row.
create table order_events (
  build text not null,
  order_number integer not null check (order_number > 0),
  event integer not null check (event > 0),
  act text not null check (act in ('ordered', 'paid', 'arrived', 'checked', 'wrong', 'returned', 'refunded', 'cancelled', 'deposit-back', 'withdrawn')),
  at text not null,
  who text,
  why text,
  document text not null,
  primary key (build, order_number, event),
  check ((act = 'ordered') = (event = 1))
) strict;

-- Computed of the events: what came of each line that was looked at. It does not refer to parts: a book may drop a part that was counted, and the count is there again when the part is.
create table deliveries (
  build text not null,
  order_number integer not null,
  line integer not null check (line > 0),
  seller text,
  asked_part_key text not null,
  -- null where the ordered part came, or one whose number no book has
  sent_part_key text,
  other_part integer not null check (other_part in (0, 1)),
  primary key (build, order_number, line)
) strict, without rowid;
