-- Orders belong to a build from the version on that made it: one made anew under the code of a deleted one has none of that one's. And a seller may keep a deposit, or charge for taking back.
create table order_events_anew (
  build text not null,
  since integer not null check (since > 0),
  order_number integer not null check (order_number > 0),
  event integer not null check (event > 0),
  act text not null check (act in (
    'ordered', 'paid', 'arrived', 'checked', 'wrong', 'returned', 'refunded', 'cancelled', 'deposit-back', 'deposit-kept', 'charged', 'withdrawn')),
  at text not null,
  who text,
  why text,
  document text not null,
  primary key (build, since, order_number, event),
  check ((act = 'ordered') = (event = 1))
) strict;

insert into order_events_anew (build, since, order_number, event, act, at, who, why, document)
select e.build,
  -- the build that was there when the order was made; 1 where none is recorded
  coalesce((
    select max(v.version)
    from build_versions v
    join order_events first on first.build = e.build and first.order_number = e.order_number and first.event = 1
    where v.build = e.build and v.act = 'create' and v.at <= first.at), 1),
  e.order_number, e.event, e.act, e.at, e.who, e.why, e.document
from order_events e;

create table deliveries_anew (
  build text not null,
  since integer not null check (since > 0),
  order_number integer not null,
  line integer not null check (line > 0),
  seller text,
  asked_part_key text not null,
  -- null where the ordered part came, or one whose number no book has
  sent_part_key text,
  other_part integer not null check (other_part in (0, 1)),
  primary key (build, since, order_number, line)
) strict, without rowid;

insert into deliveries_anew (build, since, order_number, line, seller, asked_part_key, sent_part_key, other_part)
select d.build, e.since, d.order_number, d.line, d.seller, d.asked_part_key, d.sent_part_key, d.other_part
from deliveries d
join order_events_anew e on e.build = d.build and e.order_number = d.order_number and e.event = 1;

drop table order_events;
drop table deliveries;
alter table order_events_anew rename to order_events;
alter table deliveries_anew rename to deliveries;
