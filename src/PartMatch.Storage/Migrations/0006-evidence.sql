-- What somebody found of a part at a position of a variant, more about the sources, single examples of parts, service limits, sellers; and the history of every change.

-- No program ever wrote these; items are part of a book now, so that they are edited, exported and merged like everything else.
drop table item_works;
drop table item_values;
drop table items;

create table findings (
  book text not null references books (book) deferrable initially deferred,
  finding text not null,
  part text not null,
  variant text not null,
  position text not null,
  axis text not null check (axis in ('mounts', 'runs')),
  outcome text not null check (outcome in ('yes', 'with-work', 'no', 'same', 'differently')),
  built_from text,
  built_to text,
  serial_from text,
  serial_to text,
  "with" text,
  evidence text not null,
  note text,
  -- computed; part_key is null where the finding is of the position left empty
  part_key text references parts (part_key) deferrable initially deferred,
  evidence_book text,
  primary key (book, finding),
  foreign key (book, variant) references variants (book, variant) deferrable initially deferred,
  foreign key (book, position) references positions (book, position) deferrable initially deferred,
  foreign key (evidence_book, evidence) references evidence (book, evidence) deferrable initially deferred
) strict, without rowid;

create index findings_part on findings (part_key);
create index findings_variant on findings (book, variant);
create index findings_position on findings (book, position);
create index findings_evidence on findings (evidence_book, evidence);

create table sources (
  book text not null references books (book) deferrable initially deferred,
  evidence text not null,
  speaks_of text check (speaks_of in ('number', 'item')),
  instrument text,
  hours text,
  output text,
  output_unit text,
  fuel text,
  page text,
  note text,
  -- computed
  evidence_book text,
  primary key (book, evidence),
  foreign key (evidence_book, evidence) references evidence (book, evidence) deferrable initially deferred
) strict, without rowid;

create index sources_evidence on sources (evidence_book, evidence);

create table items (
  book text not null references books (book) deferrable initially deferred,
  item text not null,
  part text not null,
  origin text check (origin in ('donor', 'yard-pull', 'arrival', 'bench-stock')),
  condition text,
  evidence text,
  note text,
  -- computed
  part_key text not null references parts (part_key) deferrable initially deferred,
  evidence_book text,
  primary key (book, item),
  foreign key (evidence_book, evidence) references evidence (book, evidence) deferrable initially deferred
) strict, without rowid;

create index items_part on items (part_key);
create index items_evidence on items (evidence_book, evidence);

create table readings (
  book text not null references books (book) deferrable initially deferred,
  item text not null,
  feature text not null,
  value text not null,
  unit text,
  uncertainty text,
  instrument text,
  read_on text,
  evidence text,
  note text,
  -- computed
  type text not null,
  evidence_book text,
  primary key (book, item, feature),
  foreign key (book, item) references items (book, item) deferrable initially deferred,
  foreign key (evidence_book, evidence) references evidence (book, evidence) deferrable initially deferred
) strict, without rowid;

create index readings_evidence on readings (evidence_book, evidence);

create table works_done (
  book text not null references books (book) deferrable initially deferred,
  item text not null,
  work text not null,
  done_on text,
  note text,
  -- computed
  work_book text,
  primary key (book, item, work),
  foreign key (book, item) references items (book, item) deferrable initially deferred,
  foreign key (work_book, work) references works (book, work) deferrable initially deferred
) strict, without rowid;

create index works_done_work on works_done (work_book, work);

create table limits (
  book text not null references books (book) deferrable initially deferred,
  kind text not null,
  feature text not null,
  min text,
  max text,
  unit text,
  consequence text not null check (consequence in ('nuisance', 'loss', 'damage', 'injury')),
  evidence text,
  note text,
  -- computed
  kind_book text not null,
  evidence_book text,
  primary key (book, kind, feature),
  foreign key (kind_book, kind) references kinds (book, kind) deferrable initially deferred,
  foreign key (evidence_book, evidence) references evidence (book, evidence) deferrable initially deferred
) strict, without rowid;

create index limits_kind on limits (kind_book, kind);
create index limits_evidence on limits (evidence_book, evidence);

create table photos (
  book text not null references books (book) deferrable initially deferred,
  photo text not null,
  image text not null,
  evidence text,
  item text,
  caption text,
  -- computed
  evidence_book text,
  primary key (book, photo),
  foreign key (book, item) references items (book, item) deferrable initially deferred,
  foreign key (evidence_book, evidence) references evidence (book, evidence) deferrable initially deferred
) strict, without rowid;

create index photos_item on photos (book, item);
create index photos_evidence on photos (evidence_book, evidence);
create index photos_image on photos (image);

create table sellers (
  book text not null references books (book) deferrable initially deferred,
  seller text not null,
  name text not null,
  country text,
  currency text,
  shipping_fixed text,
  shipping_per_item text,
  free_from text,
  import_charge text,
  days_min text,
  days_max text,
  returns_days text,
  restocking text,
  note text,
  primary key (book, seller)
) strict, without rowid;

-- Every change, for ever. Rows do not refer to the tables they tell of: what is gone is told of as well.
create table changes (
  change integer not null primary key autoincrement,
  book text not null,
  at text not null,
  who text,
  why text,
  act text not null check (act in ('edit', 'import', 'merge', 'undo', 'promote')),
  undoes integer unique references changes (change) deferrable initially deferred
) strict;

create index changes_book on changes (book, change);

-- One row of a file before and after: an object of its cells by column, null where there was none.
create table changed_rows (
  change integer not null references changes (change) deferrable initially deferred,
  "table" text not null,
  "key" text not null,
  before text,
  after text,
  primary key (change, "table", "key"),
  check (before is not null or after is not null)
) strict, without rowid;

create index changed_rows_key on changed_rows ("table", "key", change);
