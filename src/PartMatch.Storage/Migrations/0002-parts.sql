create table parts (
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

-- A maker's number is one part, whatever book describes it.
create unique index parts_part_key on parts (part_key);
create index parts_number_key on parts (number_key);
create index parts_kind on parts (kind_book, kind);
create index parts_kind_code on parts (kind);
create index parts_evidence on parts (evidence_book, evidence);

create table numbers (
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

create index numbers_number_key on numbers (number_key);
create index numbers_part on numbers (part_key);

create table "values" (
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

create index values_part on "values" (part_key);
create index values_evidence on "values" (evidence_book, evidence);

create table curves (
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

create index curves_part on curves (part_key);
create index curves_evidence on curves (evidence_book, evidence);

create table supersessions (
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

create index supersessions_old_part on supersessions (old_part_key);
create index supersessions_new_part on supersessions (new_part_key);
create index supersessions_evidence on supersessions (evidence_book, evidence);

create table contents (
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

create index contents_set on contents (set_key);
create index contents_part on contents (part_key);
