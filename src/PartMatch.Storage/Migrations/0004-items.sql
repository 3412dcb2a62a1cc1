-- One physical example of a part: the donor's own, a yard pull, an arrival. It belongs to the builder, not to a book, and never changes the values of its part.
create table items (
  item text not null primary key,
  part text,
  condition text,
  note text,
  -- computed
  part_key text references parts (part_key) deferrable initially deferred
) strict, without rowid;

create index items_part on items (part_key);

create table item_values (
  item text not null references items (item) deferrable initially deferred,
  feature text not null,
  value text not null,
  unit text,
  uncertainty text,
  measured_on text,
  primary key (item, feature)
) strict, without rowid;

create table item_works (
  item text not null references items (item) deferrable initially deferred,
  work_book text not null,
  work text not null,
  done_on text,
  primary key (item, work_book, work),
  foreign key (work_book, work) references works (book, work) deferrable initially deferred
) strict, without rowid;

create index item_works_work on item_works (work_book, work);
