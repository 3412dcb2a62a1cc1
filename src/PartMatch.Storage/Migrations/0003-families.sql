create table variants (
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

create index variants_evidence on variants (evidence_book, evidence);

create table engine (
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

create index engine_evidence on engine (evidence_book, evidence);

create table positions (
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

create index positions_kind on positions (kind_book, kind);

create table fitments (
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

create index fitments_position on fitments (book, position);
create index fitments_part on fitments (part_key);
create index fitments_evidence on fitments (evidence_book, evidence);

create table needs (
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

create index needs_position on needs (book, position);
create index needs_evidence on needs (evidence_book, evidence);

create table joints (
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

create index joints_left on joints (book, left_position);
create index joints_right on joints (book, right_position);
create index joints_work on joints (work_book, work);
create index joints_evidence on joints (evidence_book, evidence);

create table stacks (
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

create index stacks_work on stacks (work_book, work);
create index stacks_evidence on stacks (evidence_book, evidence);

create table selects (
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

create index selects_measure_position on selects (book, measure_position);
create index selects_part on selects (part_key);
create index selects_evidence on selects (evidence_book, evidence);

create table companions (
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

create index companions_when on companions (book, when_position);
create index companions_then on companions (book, then_position);
create index companions_evidence on companions (evidence_book, evidence);
