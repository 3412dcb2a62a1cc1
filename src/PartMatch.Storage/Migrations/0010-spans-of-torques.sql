-- A maker changes a torque from one engine on. The span joins the key, so the table is made anew; what was there holds for every engine of its variant.
alter table torques rename to torques_of_all_engines;

create table torques (
  book text not null references books (book) deferrable initially deferred,
  variant text not null,
  position text not null,
  pass text not null,
  -- empty where the source sets no limit
  built_from text not null,
  built_to text not null,
  serial_from text not null,
  serial_to text not null,
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
  primary key (book, variant, position, evidence, pass, built_from, built_to, serial_from, serial_to),
  foreign key (book, variant) references variants (book, variant) deferrable initially deferred,
  foreign key (book, position) references positions (book, position) deferrable initially deferred,
  foreign key (evidence_book, evidence) references evidence (book, evidence) deferrable initially deferred
) strict, without rowid;

insert into torques (
  book, variant, position, pass, built_from, built_to, serial_from, serial_to, value, minus, plus, unit, lubrication, sequence, single_use, evidence, note,
  evidence_book)
select book, variant, position, pass, '', '', '', '', value, minus, plus, unit, lubrication, sequence, single_use, evidence, note, evidence_book
from torques_of_all_engines;

drop table torques_of_all_engines;

create index torques_position on torques (book, position);
create index torques_evidence on torques (evidence_book, evidence);

-- The history finds a row by its key, which has four cells more now.
update changed_rows set "key" = "key" || ',,,,' where "table" = 'torques';
