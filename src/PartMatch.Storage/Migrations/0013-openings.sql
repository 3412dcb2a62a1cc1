-- In which order an engine comes apart, what is renewed because it was opened, and what is known to be weak.

create table openings (
  book text not null references books (book) deferrable initially deferred,
  position text not null,
  off_first text not null,
  -- empty for every variant
  variants text not null,
  evidence text,
  note text,
  -- computed
  evidence_book text,
  primary key (book, position, off_first, variants),
  foreign key (book, position) references positions (book, position) deferrable initially deferred,
  foreign key (book, off_first) references positions (book, position) deferrable initially deferred,
  foreign key (evidence_book, evidence) references evidence (book, evidence) deferrable initially deferred
) strict, without rowid;

create index openings_off_first on openings (book, off_first);
create index openings_evidence on openings (evidence_book, evidence);

create table renewals (
  book text not null references books (book) deferrable initially deferred,
  opened text not null,
  renewed text not null,
  amount text,
  unit text,
  bead text,
  cure_hours text,
  -- empty for every variant
  variants text not null,
  evidence text,
  note text,
  -- computed
  evidence_book text,
  primary key (book, opened, renewed, variants),
  foreign key (book, opened) references positions (book, position) deferrable initially deferred,
  foreign key (book, renewed) references positions (book, position) deferrable initially deferred,
  foreign key (evidence_book, evidence) references evidence (book, evidence) deferrable initially deferred
) strict, without rowid;

create index renewals_renewed on renewals (book, renewed);
create index renewals_evidence on renewals (evidence_book, evidence);

create table weak_points (
  book text not null references books (book) deferrable initially deferred,
  weak_point text not null,
  variant text not null,
  position text not null,
  what text not null,
  remedy_part text,
  remedy_work text,
  built_from text,
  built_to text,
  serial_from text,
  serial_to text,
  evidence text,
  note text,
  -- computed
  remedy_part_key text references parts (part_key) deferrable initially deferred,
  remedy_work_book text,
  evidence_book text,
  primary key (book, weak_point),
  foreign key (book, variant) references variants (book, variant) deferrable initially deferred,
  foreign key (book, position) references positions (book, position) deferrable initially deferred,
  foreign key (remedy_work_book, remedy_work) references works (book, work) deferrable initially deferred,
  foreign key (evidence_book, evidence) references evidence (book, evidence) deferrable initially deferred
) strict, without rowid;

create index weak_points_variant on weak_points (book, variant);
create index weak_points_position on weak_points (book, position);
create index weak_points_remedy_part on weak_points (remedy_part_key);
create index weak_points_remedy_work on weak_points (remedy_work_book, remedy_work);
create index weak_points_evidence on weak_points (evidence_book, evidence);
