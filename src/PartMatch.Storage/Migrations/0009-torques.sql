-- How a fastener of a variant is tightened, pass by pass, by each source that says so.
create table torques (
  book text not null references books (book) deferrable initially deferred,
  variant text not null,
  position text not null,
  pass text not null,
  value text not null,
  minus text,
  plus text,
  unit text not null,
  lubrication text check (lubrication in ('dry', 'oiled', 'zinc-plated', 'cadmium-plated', 'other')),
  sequence text,
  single_use text check (single_use in ('no', 'yes', 'stretch')),
  evidence text not null,
  note text,
  -- computed
  evidence_book text,
  primary key (book, variant, position, evidence, pass),
  foreign key (book, variant) references variants (book, variant) deferrable initially deferred,
  foreign key (book, position) references positions (book, position) deferrable initially deferred,
  foreign key (evidence_book, evidence) references evidence (book, evidence) deferrable initially deferred
) strict, without rowid;

create index torques_position on torques (book, position);
create index torques_evidence on torques (evidence_book, evidence);
