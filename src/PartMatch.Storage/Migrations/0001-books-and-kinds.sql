-- Tables mirror the files of a parts book column for column; every cell is kept as typed, so that export writes it back.
-- Key columns hold '' where the cell is empty; any other empty cell is null: not recorded.
-- Columns after a "computed" mark are worked out by the import:
--   <column>_key   maker:NUMBERKEY of the part that the cell names; null for none
--   <column>_book  the book, this one or one that it uses, in which the code was found; null where the cell is empty
-- References are checked at the end of the import's transaction, so that rows may be written in any order.

create table books (
  format text not null,
  book text not null primary key,
  kind text not null check (kind in ('common', 'family')),
  title text not null,
  maker text,
  uses text,
  licence text,
  note text
) strict, without rowid;

create table book_uses (
  book text not null references books (book) deferrable initially deferred,
  used text not null references books (book) deferrable initially deferred,
  primary key (book, used)
) strict, without rowid;

create index book_uses_used on book_uses (used);

create table makers (
  book text not null references books (book) deferrable initially deferred,
  maker text not null,
  name text not null,
  primary key (book, maker)
) strict, without rowid;

create table evidence (
  book text not null references books (book) deferrable initially deferred,
  evidence text not null,
  grade text not null,
  date text,
  author text,
  source text,
  derived_from text,
  retracted_on text,
  retracted_why text,
  -- computed
  derived_from_book text,
  primary key (book, evidence),
  foreign key (derived_from_book, derived_from) references evidence (book, evidence) deferrable initially deferred
) strict, without rowid;

create index evidence_derived_from on evidence (derived_from_book, derived_from);

create table works (
  book text not null references books (book) deferrable initially deferred,
  work text not null,
  name text not null,
  minutes text,
  days text,
  price text,
  currency text,
  who text,
  needs_first text,
  changes text,
  undo text,
  cautions text,
  -- computed: the price in the currency's minor unit
  price_minor integer,
  primary key (book, work)
) strict, without rowid;

create table kinds (
  book text not null references books (book) deferrable initially deferred,
  kind text not null,
  name text not null,
  running text not null check (running in ('can-alter', 'cannot-alter')),
  reviewed text not null check (reviewed in ('yes', 'no')),
  cautions text,
  primary key (book, kind)
) strict, without rowid;

create table features (
  book text not null references books (book) deferrable initially deferred,
  kind text not null,
  feature text not null,
  name text not null,
  type text not null check (type in ('quantity', 'count', 'choice', 'choices', 'curve')),
  unit text,
  choices text,
  -- computed
  kind_book text not null,
  primary key (book, kind, feature),
  foreign key (kind_book, kind) references kinds (book, kind) deferrable initially deferred
) strict, without rowid;

create index features_kind on features (kind_book, kind);

create table rules (
  book text not null references books (book) deferrable initially deferred,
  kind text not null,
  feature text not null,
  effect text not null check (effect in ('stops', 'work', 'alters')),
  relation text not null,
  allowance text,
  unit text,
  work text,
  consequence text not null check (consequence in ('nuisance', 'loss', 'damage', 'injury')),
  note text,
  -- computed
  kind_book text not null,
  work_book text,
  primary key (book, kind, feature, effect),
  foreign key (kind_book, kind) references kinds (book, kind) deferrable initially deferred,
  foreign key (work_book, work) references works (book, work) deferrable initially deferred
) strict, without rowid;

create index rules_kind on rules (kind_book, kind);
create index rules_work on rules (work_book, work);

create table checks (
  book text not null references books (book) deferrable initially deferred,
  kind text not null,
  feature text not null,
  method text not null,
  minutes text not null,
  uncertainty text,
  unit text,
  how text,
  -- computed
  kind_book text not null,
  primary key (book, kind, feature, method),
  foreign key (kind_book, kind) references kinds (book, kind) deferrable initially deferred
) strict, without rowid;

create index checks_kind on checks (kind_book, kind);
