-- A base of schema 1 as the program left it that had 1 migrations: kept as it was, to prove that every later program brings it up with its rows.
pragma foreign_keys = off;
begin;
CREATE TABLE books (
  format text not null,
  book text not null primary key,
  kind text not null check (kind in ('common', 'family')),
  title text not null,
  maker text,
  uses text,
  licence text,
  note text
) strict, without rowid;
CREATE TABLE book_uses (
  book text not null references books (book) deferrable initially deferred,
  used text not null references books (book) deferrable initially deferred,
  primary key (book, used)
) strict, without rowid;
CREATE INDEX book_uses_used on book_uses (used);
CREATE TABLE makers (
  book text not null references books (book) deferrable initially deferred,
  maker text not null,
  name text not null,
  primary key (book, maker)
) strict, without rowid;
CREATE TABLE evidence (
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
CREATE INDEX evidence_derived_from on evidence (derived_from_book, derived_from);
CREATE TABLE works (
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
CREATE TABLE kinds (
  book text not null references books (book) deferrable initially deferred,
  kind text not null,
  name text not null,
  running text not null check (running in ('can-alter', 'cannot-alter')),
  reviewed text not null check (reviewed in ('yes', 'no')),
  cautions text,
  primary key (book, kind)
) strict, without rowid;
CREATE TABLE features (
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
CREATE INDEX features_kind on features (kind_book, kind);
CREATE TABLE rules (
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
CREATE INDEX rules_kind on rules (kind_book, kind);
CREATE INDEX rules_work on rules (work_book, work);
CREATE TABLE checks (
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
CREATE INDEX checks_kind on checks (kind_book, kind);
insert into "books" ("format", "book", "kind", "title", "maker", "uses", "licence", "note") values ('1', 'lark-2', 'family', 'Lark 2', 'marl', 'shared', 'CC0-1.0', null);
insert into "books" ("format", "book", "kind", "title", "maker", "uses", "licence", "note") values ('1', 'shared', 'common', 'Shared kinds', null, null, 'CC0-1.0', null);
insert into "book_uses" ("book", "used") values ('lark-2', 'shared');
insert into "makers" ("book", "maker", "name") values ('lark-2', 'marl', 'Marl Engines');
insert into "makers" ("book", "maker", "name") values ('shared', 'orrin', 'Orrin & Daughters');
insert into "evidence" ("book", "evidence", "grade", "date", "author", "source", "derived_from", "retracted_on", "retracted_why", "derived_from_book") values ('lark-2', 'ev-0001', 'makers-document', '2019-04-01', null, 'parts list', null, null, null, null);
insert into "evidence" ("book", "evidence", "grade", "date", "author", "source", "derived_from", "retracted_on", "retracted_why", "derived_from_book") values ('lark-2', 'ev-0002', 'measured', '2026-02-14', 'bench 2', 'bench sheet 17', null, null, null, null);
insert into "evidence" ("book", "evidence", "grade", "date", "author", "source", "derived_from", "retracted_on", "retracted_why", "derived_from_book") values ('lark-2', 'ev-0003', 'reported', '2026-03', null, 'copied', 'ev-0002', '2026-04-01', 'wrong part', 'lark-2');
insert into "evidence" ("book", "evidence", "grade", "date", "author", "source", "derived_from", "retracted_on", "retracted_why", "derived_from_book") values ('lark-2', 'ev-0004', 'ran-under-load', '2026-05-02', 'bench 2', 'log of the brake stand', null, null, null, null);
insert into "evidence" ("book", "evidence", "grade", "date", "author", "source", "derived_from", "retracted_on", "retracted_why", "derived_from_book") values ('lark-2', 'ev-0005', 'measured', '2026-05-03', 'bench 2', 'sheet of the donor', null, null, null, null);
insert into "evidence" ("book", "evidence", "grade", "date", "author", "source", "derived_from", "retracted_on", "retracted_why", "derived_from_book") values ('shared', 'ev-0001', 'makers-document', '2020-01', null, 'wall chart', null, null, null, null);
insert into "works" ("book", "work", "name", "minutes", "days", "price", "currency", "who", "needs_first", "changes", "undo", "cautions", "price_minor") values ('shared', 'ream-bush', 'ream the bush', '30', '1.5', '40.00', 'EUR', 'machine shop', 'bush|shaft', 'bush.bore', 'no', 'tightening', 4000);
insert into "kinds" ("book", "kind", "name", "running", "reviewed", "cautions") values ('shared', 'bush', 'Bush', 'cannot-alter', 'yes', null);
insert into "kinds" ("book", "kind", "name", "running", "reviewed", "cautions") values ('shared', 'injector', 'Injector', 'can-alter', 'no', 'fuel-pressure|hot-parts');
insert into "kinds" ("book", "kind", "name", "running", "reviewed", "cautions") values ('shared', 'shaft', 'Shaft', 'can-alter', 'yes', 'tightening');
insert into "features" ("book", "kind", "feature", "name", "type", "unit", "choices", "kind_book") values ('shared', 'bush', 'bore', 'bore', 'quantity', 'mm', null, 'shared');
insert into "features" ("book", "kind", "feature", "name", "type", "unit", "choices", "kind_book") values ('shared', 'bush', 'grooves', 'grooves', 'count', null, null, 'shared');
insert into "features" ("book", "kind", "feature", "name", "type", "unit", "choices", "kind_book") values ('shared', 'bush', 'lining', 'lining', 'choices', null, 'bronze|polymer|tin', 'shared');
insert into "features" ("book", "kind", "feature", "name", "type", "unit", "choices", "kind_book") values ('shared', 'injector', 'dead-time', 'dead time', 'curve', 'ms', null, 'shared');
insert into "features" ("book", "kind", "feature", "name", "type", "unit", "choices", "kind_book") values ('shared', 'injector', 'fuel', 'made for', 'choice', null, 'e85|petrol', 'shared');
insert into "features" ("book", "kind", "feature", "name", "type", "unit", "choices", "kind_book") values ('shared', 'injector', 'length', 'length', 'quantity', 'mm', null, 'shared');
insert into "features" ("book", "kind", "feature", "name", "type", "unit", "choices", "kind_book") values ('shared', 'shaft', 'lobes', 'lobes', 'count', null, null, 'shared');
insert into "features" ("book", "kind", "feature", "name", "type", "unit", "choices", "kind_book") values ('shared', 'shaft', 'nose', 'nose', 'choice', null, 'plain|tang', 'shared');
insert into "features" ("book", "kind", "feature", "name", "type", "unit", "choices", "kind_book") values ('shared', 'shaft', 'outer', 'outer diameter', 'quantity', 'mm', null, 'shared');
insert into "rules" ("book", "kind", "feature", "effect", "relation", "allowance", "unit", "work", "consequence", "note", "kind_book", "work_book") values ('shared', 'bush', 'bore', 'stops', 'same', '0.01', 'mm', null, 'damage', null, 'shared', null);
insert into "rules" ("book", "kind", "feature", "effect", "relation", "allowance", "unit", "work", "consequence", "note", "kind_book", "work_book") values ('shared', 'bush', 'bore', 'work', 'at-most', null, null, 'ream-bush', 'loss', null, 'shared', 'shared');
insert into "rules" ("book", "kind", "feature", "effect", "relation", "allowance", "unit", "work", "consequence", "note", "kind_book", "work_book") values ('shared', 'bush', 'lining', 'alters', 'covers', null, null, null, 'nuisance', null, 'shared', null);
insert into "rules" ("book", "kind", "feature", "effect", "relation", "allowance", "unit", "work", "consequence", "note", "kind_book", "work_book") values ('shared', 'shaft', 'nose', 'stops', 'same', null, null, null, 'injury', 'two words, a comma', 'shared', null);
insert into "checks" ("book", "kind", "feature", "method", "minutes", "uncertainty", "unit", "how", "kind_book") values ('shared', 'bush', 'bore', 'gauge', '4', '0.002', 'mm', 'largest of three readings', 'shared');
insert into "checks" ("book", "kind", "feature", "method", "minutes", "uncertainty", "unit", "how", "kind_book") values ('shared', 'shaft', 'nose', 'photo', '1', null, null, 'photo of the front end', 'shared');
insert into "checks" ("book", "kind", "feature", "method", "minutes", "uncertainty", "unit", "how", "kind_book") values ('shared', 'shaft', 'outer', 'photo', '1', '0.5', 'mm', 'beside a ruler', 'shared');
pragma user_version = 1;
pragma application_id = 0x50415254;
commit;
