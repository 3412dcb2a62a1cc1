-- A base of schema 4 as the program left it that had 4 migrations: kept as it was, to prove that every later program brings it up with its rows.
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
CREATE TABLE parts (
  book text not null references books (book) deferrable initially deferred,
  part text not null,
  kind text not null,
  name text not null,
  note text,
  evidence text,
  -- computed; name_words: the name in lower case, a blank before each word
  part_key text not null,
  maker text not null,
  number_key text not null,
  name_words text not null,
  kind_book text not null,
  evidence_book text,
  primary key (book, part),
  foreign key (kind_book, kind) references kinds (book, kind) deferrable initially deferred,
  foreign key (evidence_book, evidence) references evidence (book, evidence) deferrable initially deferred
) strict, without rowid;
CREATE UNIQUE INDEX parts_part_key on parts (part_key);
CREATE INDEX parts_number_key on parts (number_key);
CREATE INDEX parts_kind on parts (kind_book, kind);
CREATE INDEX parts_kind_code on parts (kind);
CREATE INDEX parts_evidence on parts (evidence_book, evidence);
CREATE TABLE numbers (
  book text not null references books (book) deferrable initially deferred,
  number text not null,
  sort text not null,
  part text not null,
  note text,
  -- computed
  maker text not null,
  number_key text not null,
  part_key text not null references parts (part_key) deferrable initially deferred,
  primary key (book, number, part)
) strict, without rowid;
CREATE INDEX numbers_number_key on numbers (number_key);
CREATE INDEX numbers_part on numbers (part_key);
CREATE TABLE "values" (
  book text not null references books (book) deferrable initially deferred,
  part text not null,
  feature text not null,
  value text not null,
  minus text,
  plus text,
  unit text,
  uncertainty text,
  evidence text not null,
  -- computed; value_si: for ordering and searching in SQL only, deciders reckon from the text
  part_key text not null references parts (part_key) deferrable initially deferred,
  type text not null,
  value_si real,
  evidence_book text,
  primary key (book, part, feature, evidence),
  foreign key (evidence_book, evidence) references evidence (book, evidence) deferrable initially deferred
) strict, without rowid;
CREATE INDEX values_part on "values" (part_key);
CREATE INDEX values_evidence on "values" (evidence_book, evidence);
CREATE TABLE curves (
  book text not null references books (book) deferrable initially deferred,
  part text not null,
  curve text not null,
  x text not null,
  x_unit text not null,
  y text not null,
  y_unit text,
  value text not null,
  unit text not null,
  evidence text not null,
  -- computed
  part_key text not null references parts (part_key) deferrable initially deferred,
  evidence_book text,
  primary key (book, part, curve, x, y, evidence),
  foreign key (evidence_book, evidence) references evidence (book, evidence) deferrable initially deferred
) strict, without rowid;
CREATE INDEX curves_part on curves (part_key);
CREATE INDEX curves_evidence on curves (evidence_book, evidence);
CREATE TABLE supersessions (
  book text not null references books (book) deferrable initially deferred,
  old_part text not null,
  new_part text not null,
  way text not null check (way in ('one', 'both')),
  quantity text not null,
  "with" text,
  built_from text,
  built_to text,
  serial_from text,
  serial_to text,
  variants text,
  evidence text,
  note text,
  -- computed
  old_part_key text not null references parts (part_key) deferrable initially deferred,
  new_part_key text not null references parts (part_key) deferrable initially deferred,
  evidence_book text,
  primary key (book, old_part, new_part),
  foreign key (evidence_book, evidence) references evidence (book, evidence) deferrable initially deferred
) strict, without rowid;
CREATE INDEX supersessions_old_part on supersessions (old_part_key);
CREATE INDEX supersessions_new_part on supersessions (new_part_key);
CREATE INDEX supersessions_evidence on supersessions (evidence_book, evidence);
CREATE TABLE contents (
  book text not null references books (book) deferrable initially deferred,
  "set" text not null,
  part text not null,
  quantity text,
  certain text check (certain in ('yes', 'no', 'possible')),
  note text,
  -- computed
  set_key text not null references parts (part_key) deferrable initially deferred,
  part_key text not null references parts (part_key) deferrable initially deferred,
  primary key (book, "set", part)
) strict, without rowid;
CREATE INDEX contents_set on contents (set_key);
CREATE INDEX contents_part on contents (part_key);
CREATE TABLE variants (
  book text not null references books (book) deferrable initially deferred,
  variant text not null,
  name text not null,
  built_from text,
  built_to text,
  serial_from text,
  serial_to text,
  evidence text,
  -- computed
  evidence_book text,
  primary key (book, variant),
  foreign key (evidence_book, evidence) references evidence (book, evidence) deferrable initially deferred
) strict, without rowid;
CREATE INDEX variants_evidence on variants (evidence_book, evidence);
CREATE TABLE engine (
  book text not null references books (book) deferrable initially deferred,
  variant text not null,
  property text not null,
  value text not null,
  minus text,
  plus text,
  unit text,
  uncertainty text,
  evidence text,
  -- computed
  value_si real,
  evidence_book text,
  primary key (book, variant, property),
  foreign key (book, variant) references variants (book, variant) deferrable initially deferred,
  foreign key (evidence_book, evidence) references evidence (book, evidence) deferrable initially deferred
) strict, without rowid;
CREATE INDEX engine_evidence on engine (evidence_book, evidence);
CREATE TABLE positions (
  book text not null references books (book) deferrable initially deferred,
  position text not null,
  name text not null,
  "group" text not null,
  kind text not null,
  role text,
  -- computed
  kind_book text not null,
  primary key (book, position),
  foreign key (kind_book, kind) references kinds (book, kind) deferrable initially deferred
) strict, without rowid;
CREATE INDEX positions_kind on positions (kind_book, kind);
CREATE TABLE fitments (
  book text not null references books (book) deferrable initially deferred,
  variant text not null,
  position text not null,
  part text not null,
  built_from text not null,
  built_to text not null,
  serial_from text not null,
  serial_to text not null,
  mark text,
  quantity text,
  evidence text,
  -- computed; part_key is null where the maker fits nothing
  part_key text references parts (part_key) deferrable initially deferred,
  evidence_book text,
  primary key (book, variant, position, part, built_from, built_to, serial_from, serial_to),
  foreign key (book, variant) references variants (book, variant) deferrable initially deferred,
  foreign key (book, position) references positions (book, position) deferrable initially deferred,
  foreign key (evidence_book, evidence) references evidence (book, evidence) deferrable initially deferred
) strict, without rowid;
CREATE INDEX fitments_position on fitments (book, position);
CREATE INDEX fitments_part on fitments (part_key);
CREATE INDEX fitments_evidence on fitments (evidence_book, evidence);
CREATE TABLE needs (
  book text not null references books (book) deferrable initially deferred,
  variant text not null,
  position text not null,
  feature text not null,
  effect text not null check (effect in ('stops', 'work', 'alters')),
  relation text not null,
  value text not null,
  minus text,
  plus text,
  unit text,
  uncertainty text,
  evidence text,
  note text,
  -- computed
  evidence_book text,
  primary key (book, variant, position, feature, effect),
  foreign key (book, variant) references variants (book, variant) deferrable initially deferred,
  foreign key (book, position) references positions (book, position) deferrable initially deferred,
  foreign key (evidence_book, evidence) references evidence (book, evidence) deferrable initially deferred
) strict, without rowid;
CREATE INDEX needs_position on needs (book, position);
CREATE INDEX needs_evidence on needs (evidence_book, evidence);
CREATE TABLE joints (
  book text not null references books (book) deferrable initially deferred,
  joint text not null,
  left_position text not null,
  left_feature text not null,
  relation text not null,
  right_position text not null,
  right_feature text not null,
  min text,
  max text,
  unit text,
  effect text not null check (effect in ('stops', 'work', 'alters')),
  work text,
  consequence text not null check (consequence in ('nuisance', 'loss', 'damage', 'injury')),
  variants text,
  evidence text,
  -- computed
  work_book text,
  evidence_book text,
  primary key (book, joint),
  foreign key (book, left_position) references positions (book, position) deferrable initially deferred,
  foreign key (book, right_position) references positions (book, position) deferrable initially deferred,
  foreign key (work_book, work) references works (book, work) deferrable initially deferred,
  foreign key (evidence_book, evidence) references evidence (book, evidence) deferrable initially deferred
) strict, without rowid;
CREATE INDEX joints_left on joints (book, left_position);
CREATE INDEX joints_right on joints (book, right_position);
CREATE INDEX joints_work on joints (work_book, work);
CREATE INDEX joints_evidence on joints (evidence_book, evidence);
CREATE TABLE stacks (
  book text not null references books (book) deferrable initially deferred,
  stack text not null,
  terms text not null,
  min text,
  max text,
  unit text not null,
  effect text not null check (effect in ('stops', 'work', 'alters')),
  work text,
  consequence text not null check (consequence in ('nuisance', 'loss', 'damage', 'injury')),
  variants text,
  evidence text,
  -- computed
  work_book text,
  evidence_book text,
  primary key (book, stack),
  foreign key (work_book, work) references works (book, work) deferrable initially deferred,
  foreign key (evidence_book, evidence) references evidence (book, evidence) deferrable initially deferred
) strict, without rowid;
CREATE INDEX stacks_work on stacks (work_book, work);
CREATE INDEX stacks_evidence on stacks (evidence_book, evidence);
CREATE TABLE selects (
  book text not null references books (book) deferrable initially deferred,
  position text not null,
  measure_position text not null,
  measure_feature text not null,
  "from" text not null,
  "to" text not null,
  unit text not null,
  part text not null,
  evidence text,
  -- computed
  part_key text not null references parts (part_key) deferrable initially deferred,
  evidence_book text,
  primary key (book, position, "from", part),
  foreign key (book, position) references positions (book, position) deferrable initially deferred,
  foreign key (book, measure_position) references positions (book, position) deferrable initially deferred,
  foreign key (evidence_book, evidence) references evidence (book, evidence) deferrable initially deferred
) strict, without rowid;
CREATE INDEX selects_measure_position on selects (book, measure_position);
CREATE INDEX selects_part on selects (part_key);
CREATE INDEX selects_evidence on selects (evidence_book, evidence);
CREATE TABLE companions (
  book text not null references books (book) deferrable initially deferred,
  companion text not null,
  when_position text not null,
  when_feature text not null,
  when_relation text not null,
  when_value text not null,
  when_unit text,
  then_position text not null,
  then_feature text not null,
  then_relation text not null,
  then_value text not null,
  then_unit text,
  variants text,
  evidence text,
  note text,
  -- computed
  evidence_book text,
  primary key (book, companion),
  foreign key (book, when_position) references positions (book, position) deferrable initially deferred,
  foreign key (book, then_position) references positions (book, position) deferrable initially deferred,
  foreign key (evidence_book, evidence) references evidence (book, evidence) deferrable initially deferred
) strict, without rowid;
CREATE INDEX companions_when on companions (book, when_position);
CREATE INDEX companions_then on companions (book, then_position);
CREATE INDEX companions_evidence on companions (evidence_book, evidence);
CREATE TABLE items (
  item text not null primary key,
  part text,
  condition text,
  note text,
  -- computed
  part_key text references parts (part_key) deferrable initially deferred
) strict, without rowid;
CREATE INDEX items_part on items (part_key);
CREATE TABLE item_values (
  item text not null references items (item) deferrable initially deferred,
  feature text not null,
  value text not null,
  unit text,
  uncertainty text,
  measured_on text,
  primary key (item, feature)
) strict, without rowid;
CREATE TABLE item_works (
  item text not null references items (item) deferrable initially deferred,
  work_book text not null,
  work text not null,
  done_on text,
  primary key (item, work_book, work),
  foreign key (work_book, work) references works (book, work) deferrable initially deferred
) strict, without rowid;
CREATE INDEX item_works_work on item_works (work_book, work);
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
insert into "parts" ("book", "part", "kind", "name", "note", "evidence", "part_key", "maker", "number_key", "name_words", "kind_book", "evidence_book") values ('lark-2', 'marl:B-1/2', 'bush', 'Front bush', 'first line
second "line", with a comma', 'ev-0001', 'marl:B12', 'marl', 'B12', ' front bush', 'shared', 'lark-2');
insert into "parts" ("book", "part", "kind", "name", "note", "evidence", "part_key", "maker", "number_key", "name_words", "kind_book", "evidence_book") values ('lark-2', 'marl:B-1/3', 'bush', 'Front bush wide', null, null, 'marl:B13', 'marl', 'B13', ' front bush wide', 'shared', null);
insert into "parts" ("book", "part", "kind", "name", "note", "evidence", "part_key", "maker", "number_key", "name_words", "kind_book", "evidence_book") values ('lark-2', 'marl:I-1', 'injector', 'Injector', null, 'ev-0002', 'marl:I1', 'marl', 'I1', ' injector', 'shared', 'lark-2');
insert into "parts" ("book", "part", "kind", "name", "note", "evidence", "part_key", "maker", "number_key", "name_words", "kind_book", "evidence_book") values ('lark-2', 'marl:S-100', 'shaft', 'Main shaft', 'Grüße – ½ Ω', 'ev-0001', 'marl:S100', 'marl', 'S100', ' main shaft', 'shared', 'lark-2');
insert into "parts" ("book", "part", "kind", "name", "note", "evidence", "part_key", "maker", "number_key", "name_words", "kind_book", "evidence_book") values ('shared', 'orrin:B-77', 'bush', 'Plain bush', null, 'ev-0001', 'orrin:B77', 'orrin', 'B77', ' plain bush', 'shared', 'shared');
insert into "numbers" ("book", "number", "sort", "part", "note", "maker", "number_key", "part_key") values ('lark-2', 'orrin:CAST 9', 'casting-mark', 'marl:B-1/2', null, 'orrin', 'CAST9', 'marl:B12');
insert into "numbers" ("book", "number", "sort", "part", "note", "maker", "number_key", "part_key") values ('lark-2', 'orrin:CAST 9', 'casting-mark', 'marl:B-1/3', null, 'orrin', 'CAST9', 'marl:B13');
insert into "numbers" ("book", "number", "sort", "part", "note", "maker", "number_key", "part_key") values ('lark-2', 'orrin:S100', 'supplier', 'marl:I-1', null, 'orrin', 'S100', 'marl:I1');
insert into "values" ("book", "part", "feature", "value", "minus", "plus", "unit", "uncertainty", "evidence", "part_key", "type", "value_si", "evidence_book") values ('lark-2', 'marl:B-1/2', 'bore', '25.400', '0.005', '0.010', 'mm', '0.001', 'ev-0001', 'marl:B12', 'quantity', 0.0254, 'lark-2');
insert into "values" ("book", "part", "feature", "value", "minus", "plus", "unit", "uncertainty", "evidence", "part_key", "type", "value_si", "evidence_book") values ('lark-2', 'marl:B-1/2', 'bore', '25.41', null, null, 'mm', '0.005', 'ev-0002', 'marl:B12', 'quantity', 0.02541, 'lark-2');
insert into "values" ("book", "part", "feature", "value", "minus", "plus", "unit", "uncertainty", "evidence", "part_key", "type", "value_si", "evidence_book") values ('lark-2', 'marl:B-1/2', 'grooves', '2', null, null, null, null, 'ev-0001', 'marl:B12', 'count', 2.0, 'lark-2');
insert into "values" ("book", "part", "feature", "value", "minus", "plus", "unit", "uncertainty", "evidence", "part_key", "type", "value_si", "evidence_book") values ('lark-2', 'marl:B-1/2', 'lining', 'bronze|tin', null, null, null, null, '', 'marl:B12', 'choices', null, null);
insert into "values" ("book", "part", "feature", "value", "minus", "plus", "unit", "uncertainty", "evidence", "part_key", "type", "value_si", "evidence_book") values ('lark-2', 'marl:I-1', 'length', '2.047', null, null, 'in', null, 'ev-0002', 'marl:I1', 'quantity', 0.0519938, 'lark-2');
insert into "values" ("book", "part", "feature", "value", "minus", "plus", "unit", "uncertainty", "evidence", "part_key", "type", "value_si", "evidence_book") values ('lark-2', 'marl:S-100', 'nose', 'tang', null, null, null, null, 'ev-0001', 'marl:S100', 'choice', null, 'lark-2');
insert into "values" ("book", "part", "feature", "value", "minus", "plus", "unit", "uncertainty", "evidence", "part_key", "type", "value_si", "evidence_book") values ('lark-2', 'marl:S-100', 'outer', '-0.5', '0', '0', 'mm', null, 'ev-0001', 'marl:S100', 'quantity', -0.0005, 'lark-2');
insert into "curves" ("book", "part", "curve", "x", "x_unit", "y", "y_unit", "value", "unit", "evidence", "part_key", "evidence_book") values ('lark-2', 'marl:I-1', 'dead-time', '12.0', 'V', '3.0', 'bar', '1.10', 'ms', 'ev-0001', 'marl:I1', 'lark-2');
insert into "curves" ("book", "part", "curve", "x", "x_unit", "y", "y_unit", "value", "unit", "evidence", "part_key", "evidence_book") values ('lark-2', 'marl:I-1', 'dead-time', '14.0', 'V', '3.0', 'bar', '0.92', 'ms', 'ev-0001', 'marl:I1', 'lark-2');
insert into "supersessions" ("book", "old_part", "new_part", "way", "quantity", "with", "built_from", "built_to", "serial_from", "serial_to", "variants", "evidence", "note", "old_part_key", "new_part_key", "evidence_book") values ('lark-2', 'marl:B-1/2', 'marl:B-1/3', 'one', '1', 'marl:S-100|orrin:B-77', null, null, '20001', null, 'la', 'ev-0003', null, 'marl:B12', 'marl:B13', 'lark-2');
insert into "contents" ("book", "set", "part", "quantity", "certain", "note", "set_key", "part_key") values ('lark-2', 'marl:S-100', 'marl:B-1/2', '2', 'yes', null, 'marl:S100', 'marl:B12');
insert into "contents" ("book", "set", "part", "quantity", "certain", "note", "set_key", "part_key") values ('lark-2', 'marl:S-100', 'marl:B-1/3', null, 'possible', null, 'marl:S100', 'marl:B13');
insert into "variants" ("book", "variant", "name", "built_from", "built_to", "serial_from", "serial_to", "evidence", "evidence_book") values ('lark-2', 'la', 'LA pump set', '2015-03', '2018-11-30', '100', '41206', 'ev-0001', 'lark-2');
insert into "variants" ("book", "variant", "name", "built_from", "built_to", "serial_from", "serial_to", "evidence", "evidence_book") values ('lark-2', 'lb', 'LB cart', null, null, '41207', null, null, null);
insert into "engine" ("book", "variant", "property", "value", "minus", "plus", "unit", "uncertainty", "evidence", "value_si", "evidence_book") values ('lark-2', 'la', 'bore', '85.00', '0.00', '0.02', 'mm', null, 'ev-0001', 0.085, 'lark-2');
insert into "engine" ("book", "variant", "property", "value", "minus", "plus", "unit", "uncertainty", "evidence", "value_si", "evidence_book") values ('lark-2', 'la', 'cylinders', '2', null, null, null, null, 'ev-0001', 2.0, 'lark-2');
insert into "engine" ("book", "variant", "property", "value", "minus", "plus", "unit", "uncertainty", "evidence", "value_si", "evidence_book") values ('lark-2', 'la', 'fuel-system', 'port-injected', null, null, null, null, null, null, null);
insert into "positions" ("book", "position", "name", "group", "kind", "role", "kind_book") values ('lark-2', 'front-bush', 'Front bush', 'bottom-end', 'bush', null, 'shared');
insert into "positions" ("book", "position", "name", "group", "kind", "role", "kind_book") values ('lark-2', 'injector', 'Injector', 'fuel', 'injector', 'injector', 'shared');
insert into "positions" ("book", "position", "name", "group", "kind", "role", "kind_book") values ('lark-2', 'main-shaft', 'Main shaft', 'bottom-end', 'shaft', null, 'shared');
insert into "fitments" ("book", "variant", "position", "part", "built_from", "built_to", "serial_from", "serial_to", "mark", "quantity", "evidence", "part_key", "evidence_book") values ('lark-2', 'la', 'front-bush', 'marl:B-1/2', '', '', '', '20000', null, '1', 'ev-0001', 'marl:B12', 'lark-2');
insert into "fitments" ("book", "variant", "position", "part", "built_from", "built_to", "serial_from", "serial_to", "mark", "quantity", "evidence", "part_key", "evidence_book") values ('lark-2', 'la', 'front-bush', 'marl:B-1/3', '', '', '20001', '', 'wide flange', '1', 'ev-0001', 'marl:B13', 'lark-2');
insert into "fitments" ("book", "variant", "position", "part", "built_from", "built_to", "serial_from", "serial_to", "mark", "quantity", "evidence", "part_key", "evidence_book") values ('lark-2', 'la', 'injector', 'marl:I-1', '', '', '', '', null, '2', null, 'marl:I1', null);
insert into "fitments" ("book", "variant", "position", "part", "built_from", "built_to", "serial_from", "serial_to", "mark", "quantity", "evidence", "part_key", "evidence_book") values ('lark-2', 'lb', 'injector', 'none', '', '', '', '', null, '0', 'ev-0001', null, 'lark-2');
insert into "fitments" ("book", "variant", "position", "part", "built_from", "built_to", "serial_from", "serial_to", "mark", "quantity", "evidence", "part_key", "evidence_book") values ('lark-2', 'lb', 'main-shaft', 'marl:S-100', '2016-05', '2017-06-01', '', '', null, '1', 'ev-0001', 'marl:S100', 'lark-2');
insert into "needs" ("book", "variant", "position", "feature", "effect", "relation", "value", "minus", "plus", "unit", "uncertainty", "evidence", "note", "evidence_book") values ('lark-2', 'la', 'front-bush', 'bore', 'work', 'at-most', '25.45', '0', '0', 'mm', null, 'ev-0001', null, 'lark-2');
insert into "needs" ("book", "variant", "position", "feature", "effect", "relation", "value", "minus", "plus", "unit", "uncertainty", "evidence", "note", "evidence_book") values ('lark-2', 'la', 'injector', 'fuel', 'stops', 'one-of', 'e85|petrol', null, null, null, null, null, null, null);
insert into "needs" ("book", "variant", "position", "feature", "effect", "relation", "value", "minus", "plus", "unit", "uncertainty", "evidence", "note", "evidence_book") values ('lark-2', 'lb', 'main-shaft', 'present', 'stops', 'same', 'yes', null, null, null, null, null, null, null);
insert into "joints" ("book", "joint", "left_position", "left_feature", "relation", "right_position", "right_feature", "min", "max", "unit", "effect", "work", "consequence", "variants", "evidence", "work_book", "evidence_book") values ('lark-2', 'shaft-in-bush', 'main-shaft', 'outer', 'band', 'front-bush', 'bore', '0.005', null, 'mm', 'work', 'ream-bush', 'damage', 'la|lb', 'ev-0001', 'shared', 'lark-2');
insert into "stacks" ("book", "stack", "terms", "min", "max", "unit", "effect", "work", "consequence", "variants", "evidence", "work_book", "evidence_book") values ('lark-2', 'bush-clearance', '+front-bush.bore|-main-shaft.outer|+1.5', '0.01', '0.05', 'mm', 'stops', null, 'injury', null, 'ev-0001', null, 'lark-2');
insert into "selects" ("book", "position", "measure_position", "measure_feature", "from", "to", "unit", "part", "evidence", "part_key", "evidence_book") values ('lark-2', 'front-bush', 'main-shaft', 'outer', '24.980', '24.990', 'mm', 'marl:B-1/2', 'ev-0001', 'marl:B12', 'lark-2');
insert into "companions" ("book", "companion", "when_position", "when_feature", "when_relation", "when_value", "when_unit", "then_position", "then_feature", "then_relation", "then_value", "then_unit", "variants", "evidence", "note", "evidence_book") values ('lark-2', 'tang-needs-bush', 'main-shaft', 'nose', 'same', 'tang', null, 'front-bush', 'bore', 'at-least', '25.3', 'mm', null, 'ev-0001', null, 'lark-2');
insert into "companions" ("book", "companion", "when_position", "when_feature", "when_relation", "when_value", "when_unit", "then_position", "then_feature", "then_relation", "then_value", "then_unit", "variants", "evidence", "note", "evidence_book") values ('lark-2', 'tang-needs-injector', 'main-shaft', 'nose', 'one-of', 'plain|tang', null, 'injector', 'present', 'same', 'yes', null, 'lb', null, null, null);
pragma user_version = 4;
pragma application_id = 0x50415254;
commit;
