-- A service limit of one part beside those of a whole kind: parts of a kind can differ when new. The part joins the key, so the table is made anew.
alter table limits rename to limits_of_kinds;

create table limits (
  book text not null references books (book) deferrable initially deferred,
  kind text not null,
  feature text not null,
  -- empty where the limit holds for the whole kind
  part text not null,
  min text,
  max text,
  unit text,
  consequence text not null check (consequence in ('nuisance', 'loss', 'damage', 'injury')),
  evidence text,
  note text,
  -- computed
  kind_book text not null,
  part_key text references parts (part_key) deferrable initially deferred,
  evidence_book text,
  primary key (book, kind, feature, part),
  foreign key (kind_book, kind) references kinds (book, kind) deferrable initially deferred,
  foreign key (evidence_book, evidence) references evidence (book, evidence) deferrable initially deferred
) strict, without rowid;

insert into limits (book, kind, feature, part, min, max, unit, consequence, evidence, note, kind_book, evidence_book)
select book, kind, feature, '', min, max, unit, consequence, evidence, note, kind_book, evidence_book
from limits_of_kinds;

drop table limits_of_kinds;

create index limits_kind on limits (kind_book, kind);
create index limits_part on limits (part_key);
create index limits_evidence on limits (evidence_book, evidence);

-- The history finds a row by its key, which has a cell more now.
update changed_rows set "key" = "key" || ',' where "table" = 'limits';
