-- What somebody found of two parts that can be taken for one another. The order of the two does not count; a book names a pair once.
create table pairs (
  book text not null references books (book) deferrable initially deferred,
  part_a text not null,
  part_b text not null,
  judgement text not null check (judgement in ('same-part', 'trap', 'harmless')),
  evidence text,
  note text,
  -- computed
  part_a_key text not null references parts (part_key) deferrable initially deferred,
  part_b_key text not null references parts (part_key) deferrable initially deferred,
  evidence_book text,
  primary key (book, part_a, part_b),
  check (part_a_key <> part_b_key),
  foreign key (evidence_book, evidence) references evidence (book, evidence) deferrable initially deferred
) strict, without rowid;

create index pairs_part_a on pairs (part_a_key);
create index pairs_part_b on pairs (part_b_key);
create index pairs_evidence on pairs (evidence_book, evidence);

create table shots (
  book text not null references books (book) deferrable initially deferred,
  kind text not null,
  shot text not null,
  name text not null,
  shows text,
  how text,
  -- computed
  kind_book text not null,
  primary key (book, kind, shot),
  foreign key (kind_book, kind) references kinds (book, kind) deferrable initially deferred
) strict, without rowid;

create index shots_kind on shots (kind_book, kind);

create table access (
  book text not null references books (book) deferrable initially deferred,
  position text not null,
  minutes text not null,
  how text,
  primary key (book, position),
  foreign key (book, position) references positions (book, position) deferrable initially deferred
) strict, without rowid;

-- Counts of what was seen, not part of any book. They do not refer to parts: a book may drop a part that was counted, and the count is there again when the part is.
create table part_odds (
  part_key text not null primary key,
  offers integer not null check (offers between 0 and 2147483647)
) strict, without rowid;

-- Of the deliveries of a part that was asked for, those in which the other part came.
create table mix_up_odds (
  asked_part_key text not null,
  sent_part_key text not null check (sent_part_key <> asked_part_key),
  deliveries integer not null check (deliveries between 0 and 2147483647),
  wrong integer not null check (wrong between 0 and deliveries),
  primary key (asked_part_key, sent_part_key)
) strict, without rowid;
