-- What goes in first where two are put in anyway, and what a builder minds at a step.

create table bench_order (
  book text not null references books (book) deferrable initially deferred,
  first text not null,
  "then" text not null,
  how text,
  -- empty for every variant
  variants text not null,
  evidence text,
  note text,
  -- computed
  evidence_book text,
  primary key (book, first, "then", variants),
  foreign key (book, first) references positions (book, position) deferrable initially deferred,
  foreign key (book, "then") references positions (book, position) deferrable initially deferred,
  foreign key (evidence_book, evidence) references evidence (book, evidence) deferrable initially deferred
) strict, without rowid;

create index bench_order_then on bench_order (book, "then");
create index bench_order_evidence on bench_order (evidence_book, evidence);

create table reminders (
  book text not null references books (book) deferrable initially deferred,
  kind text not null,
  reminder text not null,
  "at" text not null,
  works text,
  text text not null,
  evidence text,
  note text,
  -- computed
  kind_book text not null,
  evidence_book text,
  primary key (book, kind, reminder),
  foreign key (kind_book, kind) references kinds (book, kind) deferrable initially deferred,
  foreign key (evidence_book, evidence) references evidence (book, evidence) deferrable initially deferred
) strict, without rowid;

create index reminders_kind on reminders (kind_book, kind);
create index reminders_evidence on reminders (evidence_book, evidence);
