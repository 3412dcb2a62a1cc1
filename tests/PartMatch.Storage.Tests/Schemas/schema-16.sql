-- A base of schema 16 as the program left it that had 16 migrations: kept as it was, to prove that every later program brings it up with its rows.
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
INSERT INTO books VALUES('1','lark-2','family','Lark 2','marl','shared','CC0-1.0',NULL);
INSERT INTO books VALUES('1','shared','common','Shared kinds',NULL,NULL,'CC0-1.0',NULL);
CREATE TABLE book_uses (
  book text not null references books (book) deferrable initially deferred,
  used text not null references books (book) deferrable initially deferred,
  primary key (book, used)
) strict, without rowid;
INSERT INTO book_uses VALUES('lark-2','shared');
CREATE TABLE makers (
  book text not null references books (book) deferrable initially deferred,
  maker text not null,
  name text not null,
  primary key (book, maker)
) strict, without rowid;
INSERT INTO makers VALUES('lark-2','marl','Marl Engines');
INSERT INTO makers VALUES('shared','orrin','Orrin & Daughters');
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
INSERT INTO evidence VALUES('lark-2','ev-0001','makers-document','2019-04-01',NULL,'parts list',NULL,NULL,NULL,NULL);
INSERT INTO evidence VALUES('lark-2','ev-0002','measured','2026-02-14','bench 2','bench sheet 17',NULL,NULL,NULL,NULL);
INSERT INTO evidence VALUES('lark-2','ev-0003','reported','2026-03',NULL,'copied','ev-0002','2026-04-01','wrong part','lark-2');
INSERT INTO evidence VALUES('lark-2','ev-0004','ran-under-load','2026-05-02','bench 2','log of the brake stand',NULL,NULL,NULL,NULL);
INSERT INTO evidence VALUES('lark-2','ev-0005','measured','2026-05-03','bench 2','sheet of the donor',NULL,NULL,NULL,NULL);
INSERT INTO evidence VALUES('shared','ev-0001','makers-document','2020-01',NULL,'wall chart',NULL,NULL,NULL,NULL);
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
INSERT INTO works VALUES('shared','ream-bush','ream the bush','30','1.5','40.00','EUR','machine shop','bush|shaft','bush.bore','no','tightening',4000);
CREATE TABLE kinds (
  book text not null references books (book) deferrable initially deferred,
  kind text not null,
  name text not null,
  running text not null check (running in ('can-alter', 'cannot-alter')),
  reviewed text not null check (reviewed in ('yes', 'no')),
  cautions text,
  primary key (book, kind)
) strict, without rowid;
INSERT INTO kinds VALUES('shared','bush','Bush','cannot-alter','yes',NULL);
INSERT INTO kinds VALUES('shared','injector','Injector','can-alter','no','fuel-pressure|hot-parts');
INSERT INTO kinds VALUES('shared','shaft','Shaft','can-alter','yes','tightening');
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
INSERT INTO features VALUES('shared','bush','bore','bore','quantity','mm',NULL,'shared');
INSERT INTO features VALUES('shared','bush','grooves','grooves','count',NULL,NULL,'shared');
INSERT INTO features VALUES('shared','bush','lining','lining','choices',NULL,'bronze|polymer|tin','shared');
INSERT INTO features VALUES('shared','injector','dead-time','dead time','curve','ms',NULL,'shared');
INSERT INTO features VALUES('shared','injector','fuel','made for','choice',NULL,'e85|petrol','shared');
INSERT INTO features VALUES('shared','injector','length','length','quantity','mm',NULL,'shared');
INSERT INTO features VALUES('shared','shaft','lobes','lobes','count',NULL,NULL,'shared');
INSERT INTO features VALUES('shared','shaft','nose','nose','choice',NULL,'plain|tang','shared');
INSERT INTO features VALUES('shared','shaft','outer','outer diameter','quantity','mm',NULL,'shared');
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
INSERT INTO rules VALUES('shared','bush','bore','stops','same','0.01','mm',NULL,'damage',NULL,'shared',NULL);
INSERT INTO rules VALUES('shared','bush','bore','work','at-most',NULL,NULL,'ream-bush','loss',NULL,'shared','shared');
INSERT INTO rules VALUES('shared','bush','lining','alters','covers',NULL,NULL,NULL,'nuisance',NULL,'shared',NULL);
INSERT INTO rules VALUES('shared','shaft','nose','stops','same',NULL,NULL,NULL,'injury','two words, a comma','shared',NULL);
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
INSERT INTO checks VALUES('shared','bush','bore','gauge','4','0.002','mm','largest of three readings','shared');
INSERT INTO checks VALUES('shared','shaft','nose','photo','1',NULL,NULL,'photo of the front end','shared');
INSERT INTO checks VALUES('shared','shaft','outer','photo','1','0.5','mm','beside a ruler','shared');
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
INSERT INTO parts VALUES('lark-2','marl:B-1/2','bush','Front bush','first line
second "line", with a comma','ev-0001','marl:B12','marl','B12',' front bush','shared','lark-2');
INSERT INTO parts VALUES('lark-2','marl:B-1/3','bush','Front bush wide',NULL,NULL,'marl:B13','marl','B13',' front bush wide','shared',NULL);
INSERT INTO parts VALUES('lark-2','marl:I-1','injector','Injector',NULL,'ev-0002','marl:I1','marl','I1',' injector','shared','lark-2');
INSERT INTO parts VALUES('lark-2','marl:S-100','shaft','Main shaft','Grüße – ½ Ω','ev-0001','marl:S100','marl','S100',' main shaft','shared','lark-2');
INSERT INTO parts VALUES('shared','orrin:B-77','bush','Plain bush',NULL,'ev-0001','orrin:B77','orrin','B77',' plain bush','shared','shared');
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
INSERT INTO numbers VALUES('lark-2','orrin:CAST 9','casting-mark','marl:B-1/2',NULL,'orrin','CAST9','marl:B12');
INSERT INTO numbers VALUES('lark-2','orrin:CAST 9','casting-mark','marl:B-1/3',NULL,'orrin','CAST9','marl:B13');
INSERT INTO numbers VALUES('lark-2','orrin:S100','supplier','marl:I-1',NULL,'orrin','S100','marl:I1');
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
INSERT INTO "values" VALUES('lark-2','marl:B-1/2','bore','25.400','0.005','0.010','mm','0.001','ev-0001','marl:B12','quantity',0.0254,'lark-2');
INSERT INTO "values" VALUES('lark-2','marl:B-1/2','bore','25.41',NULL,NULL,'mm','0.005','ev-0002','marl:B12','quantity',0.02541,'lark-2');
INSERT INTO "values" VALUES('lark-2','marl:B-1/2','grooves','2',NULL,NULL,NULL,NULL,'ev-0001','marl:B12','count',2.0,'lark-2');
INSERT INTO "values" VALUES('lark-2','marl:B-1/2','lining','bronze|tin',NULL,NULL,NULL,NULL,'','marl:B12','choices',NULL,NULL);
INSERT INTO "values" VALUES('lark-2','marl:I-1','length','2.047',NULL,NULL,'in',NULL,'ev-0002','marl:I1','quantity',0.0519938,'lark-2');
INSERT INTO "values" VALUES('lark-2','marl:S-100','nose','tang',NULL,NULL,NULL,NULL,'ev-0001','marl:S100','choice',NULL,'lark-2');
INSERT INTO "values" VALUES('lark-2','marl:S-100','outer','-0.5','0','0','mm',NULL,'ev-0001','marl:S100','quantity',-0.0005,'lark-2');
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
INSERT INTO curves VALUES('lark-2','marl:I-1','dead-time','12.0','V','3.0','bar','1.10','ms','ev-0001','marl:I1','lark-2');
INSERT INTO curves VALUES('lark-2','marl:I-1','dead-time','14.0','V','3.0','bar','0.92','ms','ev-0001','marl:I1','lark-2');
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
INSERT INTO supersessions VALUES('lark-2','marl:B-1/2','marl:B-1/3','one','1','marl:S-100|orrin:B-77',NULL,NULL,'20001',NULL,'la','ev-0003',NULL,'marl:B12','marl:B13','lark-2');
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
INSERT INTO contents VALUES('lark-2','marl:S-100','marl:B-1/2','2','yes',NULL,'marl:S100','marl:B12');
INSERT INTO contents VALUES('lark-2','marl:S-100','marl:B-1/3',NULL,'possible',NULL,'marl:S100','marl:B13');
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
INSERT INTO variants VALUES('lark-2','la','LA pump set','2015-03','2018-11-30','100','41206','ev-0001','lark-2');
INSERT INTO variants VALUES('lark-2','lb','LB cart',NULL,NULL,'41207',NULL,NULL,NULL);
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
INSERT INTO engine VALUES('lark-2','la','bore','85.00','0.00','0.02','mm',NULL,'ev-0001',0.085,'lark-2');
INSERT INTO engine VALUES('lark-2','la','cylinders','2',NULL,NULL,NULL,NULL,'ev-0001',2.0,'lark-2');
INSERT INTO engine VALUES('lark-2','la','fuel-system','port-injected',NULL,NULL,NULL,NULL,NULL,NULL,NULL);
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
INSERT INTO positions VALUES('lark-2','front-bush','Front bush','bottom-end','bush',NULL,'shared');
INSERT INTO positions VALUES('lark-2','injector','Injector','fuel','injector','injector','shared');
INSERT INTO positions VALUES('lark-2','main-shaft','Main shaft','bottom-end','shaft',NULL,'shared');
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
INSERT INTO fitments VALUES('lark-2','la','front-bush','marl:B-1/2','','','','20000',NULL,'1','ev-0001','marl:B12','lark-2');
INSERT INTO fitments VALUES('lark-2','la','front-bush','marl:B-1/3','','','20001','','wide flange','1','ev-0001','marl:B13','lark-2');
INSERT INTO fitments VALUES('lark-2','la','injector','marl:I-1','','','','',NULL,'2',NULL,'marl:I1',NULL);
INSERT INTO fitments VALUES('lark-2','lb','injector','none','','','','',NULL,'0','ev-0001',NULL,'lark-2');
INSERT INTO fitments VALUES('lark-2','lb','main-shaft','marl:S-100','2016-05','2017-06-01','','',NULL,'1','ev-0001','marl:S100','lark-2');
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
INSERT INTO needs VALUES('lark-2','la','front-bush','bore','work','at-most','25.45','0','0','mm',NULL,'ev-0001',NULL,'lark-2');
INSERT INTO needs VALUES('lark-2','la','injector','fuel','stops','one-of','e85|petrol',NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO needs VALUES('lark-2','lb','main-shaft','present','stops','same','yes',NULL,NULL,NULL,NULL,NULL,NULL,NULL);
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
INSERT INTO joints VALUES('lark-2','shaft-in-bush','main-shaft','outer','band','front-bush','bore','0.005',NULL,'mm','work','ream-bush','damage','la|lb','ev-0001','shared','lark-2');
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
INSERT INTO stacks VALUES('lark-2','bush-clearance','+front-bush.bore|-main-shaft.outer|+1.5','0.01','0.05','mm','stops',NULL,'injury',NULL,'ev-0001',NULL,'lark-2');
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
INSERT INTO selects VALUES('lark-2','front-bush','main-shaft','outer','24.980','24.990','mm','marl:B-1/2','ev-0001','marl:B12','lark-2');
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
INSERT INTO companions VALUES('lark-2','tang-needs-bush','main-shaft','nose','same','tang',NULL,'front-bush','bore','at-least','25.3','mm',NULL,'ev-0001',NULL,'lark-2');
INSERT INTO companions VALUES('lark-2','tang-needs-injector','main-shaft','nose','one-of','plain|tang',NULL,'injector','present','same','yes',NULL,'lb',NULL,NULL,NULL);
CREATE TABLE pairs (
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
INSERT INTO pairs VALUES('lark-2','marl:B-1/2','orrin:B-77','trap','ev-0001','the oil hole is missing','marl:B12','orrin:B77','lark-2');
INSERT INTO pairs VALUES('lark-2','marl:S-100','marl:B-1/2','harmless','ev-0003',NULL,'marl:S100','marl:B12','lark-2');
CREATE TABLE shots (
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
INSERT INTO shots VALUES('shared','shaft','mark','stamped mark',NULL,NULL,'shared');
INSERT INTO shots VALUES('shared','shaft','whole','whole shaft beside a ruler','nose|outer','lay it flat, a ruler along it, camera square on','shared');
CREATE TABLE access (
  book text not null references books (book) deferrable initially deferred,
  position text not null,
  minutes text not null,
  how text,
  primary key (book, position),
  foreign key (book, position) references positions (book, position) deferrable initially deferred
) strict, without rowid;
INSERT INTO access VALUES('lark-2','front-bush','95.5','sump and front cover off');
INSERT INTO access VALUES('lark-2','injector','0',NULL);
CREATE TABLE part_odds (
  part_key text not null primary key,
  offers integer not null check (offers between 0 and 2147483647)
) strict, without rowid;
INSERT INTO part_odds VALUES('marl:B12',7);
CREATE TABLE mix_up_odds (
  asked_part_key text not null,
  sent_part_key text not null check (sent_part_key <> asked_part_key),
  deliveries integer not null check (deliveries between 0 and 2147483647),
  wrong integer not null check (wrong between 0 and deliveries),
  primary key (asked_part_key, sent_part_key)
) strict, without rowid;
INSERT INTO mix_up_odds VALUES('marl:B12','marl:B13',40,3);
CREATE TABLE findings (
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
INSERT INTO findings VALUES('lark-2','fi-0001','marl:B-1/2','la','front-bush','mounts','with-work',NULL,NULL,NULL,'20000','injector=none|main-shaft=marl:S-100','ev-0001',NULL,'marl:B12','lark-2');
INSERT INTO findings VALUES('lark-2','fi-0002','marl:S-100','lb','main-shaft','runs','same',NULL,NULL,NULL,NULL,NULL,'ev-0004',NULL,'marl:S100','lark-2');
INSERT INTO findings VALUES('lark-2','fi-0003','none','la','injector','runs','differently','2015-03','2016-12',NULL,NULL,NULL,'ev-0003',NULL,NULL,'lark-2');
CREATE TABLE sources (
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
INSERT INTO sources VALUES('lark-2','ev-0001','number',NULL,NULL,NULL,NULL,NULL,'page 12',NULL,'lark-2');
INSERT INTO sources VALUES('lark-2','ev-0004','number',NULL,'41.5','12.0','kW','petrol',NULL,'flat out, two heats','lark-2');
INSERT INTO sources VALUES('lark-2','ev-0005','item','outside micrometer 25-50',NULL,NULL,NULL,NULL,NULL,NULL,'lark-2');
CREATE TABLE items (
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
INSERT INTO items VALUES('lark-2','it-0001','marl:S-100','donor','turned once by hand','ev-0005',NULL,'marl:S100','lark-2');
INSERT INTO items VALUES('lark-2','it-0002','marl:I-1',NULL,NULL,NULL,NULL,'marl:I1',NULL);
CREATE TABLE readings (
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
INSERT INTO readings VALUES('lark-2','it-0001','nose','tang',NULL,NULL,NULL,'2026-05-03',NULL,NULL,'choice',NULL);
INSERT INTO readings VALUES('lark-2','it-0001','outer','24.985','mm','0.004','outside micrometer 25-50','2026-05-03','ev-0005','smallest of six','quantity','lark-2');
CREATE TABLE works_done (
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
INSERT INTO works_done VALUES('lark-2','it-0001','ream-bush','2026-05-04',NULL,'shared');
CREATE TABLE photos (
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
INSERT INTO photos VALUES('lark-2','ph-0001','e124007e0371a272f11e7fbc2414aff5a1095f3a46ad29771ea1bf3f8a5b07ca.png','ev-0005','it-0001','the tang','lark-2');
CREATE TABLE sellers (
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
INSERT INTO sellers VALUES('lark-2','millrace','Millrace Breakers','GB','GBP','9.50','1.20','120.00','4.5','3','6','14','15',NULL);
CREATE TABLE changes (
  change integer not null primary key autoincrement,
  book text not null,
  at text not null,
  who text,
  why text,
  act text not null check (act in ('edit', 'import', 'merge', 'undo', 'promote')),
  undoes integer unique references changes (change) deferrable initially deferred
) strict;
INSERT INTO changes VALUES(1,'shared','2026-11-26T12:45:09.232Z',NULL,NULL,'import',NULL);
INSERT INTO changes VALUES(2,'lark-2','2026-11-26T12:45:09.990Z',NULL,NULL,'import',NULL);
INSERT INTO changes VALUES(3,'lark-2','2026-11-26T12:45:10.061Z','Ada','test','edit',NULL);
INSERT INTO changes VALUES(4,'lark-2','2026-11-26T12:45:10.124Z',NULL,NULL,'undo',3);
INSERT INTO changes VALUES(5,'lark-2','2026-11-26T13:41:09.868Z','bench 2','torques read','edit',NULL);
INSERT INTO changes VALUES(6,'lark-2','2026-11-26T13:41:10.773Z','bench 2','torques read','edit',NULL);
INSERT INTO changes VALUES(7,'lark-2','2026-11-26T13:41:10.853Z','bench 2','torques read','edit',NULL);
INSERT INTO changes VALUES(8,'shared','2026-11-27T07:07:31.808Z',NULL,NULL,'import',NULL);
INSERT INTO changes VALUES(9,'lark-2','2026-11-27T07:07:32.287Z',NULL,NULL,'import',NULL);
INSERT INTO changes VALUES(10,'shared','2026-11-27T09:28:34.945Z',NULL,NULL,'import',NULL);
INSERT INTO changes VALUES(11,'lark-2','2026-11-27T09:28:36.372Z',NULL,NULL,'import',NULL);
CREATE TABLE changed_rows (
  change integer not null references changes (change) deferrable initially deferred,
  "table" text not null,
  "key" text not null,
  before text,
  after text,
  primary key (change, "table", "key"),
  check (before is not null or after is not null)
) strict, without rowid;
INSERT INTO changed_rows VALUES(1,'book','shared',NULL,'{"format":"1","book":"shared","kind":"common","title":"Shared kinds","licence":"CC0-1.0"}');
INSERT INTO changed_rows VALUES(1,'checks','bush,bore,gauge',NULL,'{"kind":"bush","feature":"bore","method":"gauge","minutes":"4","uncertainty":"0.002","unit":"mm","how":"largest of three readings"}');
INSERT INTO changed_rows VALUES(1,'checks','shaft,nose,photo',NULL,'{"kind":"shaft","feature":"nose","method":"photo","minutes":"1","how":"photo of the front end"}');
INSERT INTO changed_rows VALUES(1,'checks','shaft,outer,photo',NULL,'{"kind":"shaft","feature":"outer","method":"photo","minutes":"1","uncertainty":"0.5","unit":"mm","how":"beside a ruler"}');
INSERT INTO changed_rows VALUES(1,'evidence','ev-0001',NULL,'{"evidence":"ev-0001","grade":"makers-document","date":"2020-01","source":"wall chart"}');
INSERT INTO changed_rows VALUES(1,'features','bush,bore',NULL,'{"kind":"bush","feature":"bore","name":"bore","type":"quantity","unit":"mm"}');
INSERT INTO changed_rows VALUES(1,'features','bush,grooves',NULL,'{"kind":"bush","feature":"grooves","name":"grooves","type":"count"}');
INSERT INTO changed_rows VALUES(1,'features','bush,lining',NULL,'{"kind":"bush","feature":"lining","name":"lining","type":"choices","choices":"bronze|polymer|tin"}');
INSERT INTO changed_rows VALUES(1,'features','injector,dead-time',NULL,'{"kind":"injector","feature":"dead-time","name":"dead time","type":"curve","unit":"ms"}');
INSERT INTO changed_rows VALUES(1,'features','injector,fuel',NULL,'{"kind":"injector","feature":"fuel","name":"made for","type":"choice","choices":"e85|petrol"}');
INSERT INTO changed_rows VALUES(1,'features','injector,length',NULL,'{"kind":"injector","feature":"length","name":"length","type":"quantity","unit":"mm"}');
INSERT INTO changed_rows VALUES(1,'features','shaft,lobes',NULL,'{"kind":"shaft","feature":"lobes","name":"lobes","type":"count"}');
INSERT INTO changed_rows VALUES(1,'features','shaft,nose',NULL,'{"kind":"shaft","feature":"nose","name":"nose","type":"choice","choices":"plain|tang"}');
INSERT INTO changed_rows VALUES(1,'features','shaft,outer',NULL,'{"kind":"shaft","feature":"outer","name":"outer diameter","type":"quantity","unit":"mm"}');
INSERT INTO changed_rows VALUES(1,'kinds','bush',NULL,'{"kind":"bush","name":"Bush","running":"cannot-alter","reviewed":"yes"}');
INSERT INTO changed_rows VALUES(1,'kinds','injector',NULL,'{"kind":"injector","name":"Injector","running":"can-alter","reviewed":"no","cautions":"fuel-pressure|hot-parts"}');
INSERT INTO changed_rows VALUES(1,'kinds','shaft',NULL,'{"kind":"shaft","name":"Shaft","running":"can-alter","reviewed":"yes","cautions":"tightening"}');
INSERT INTO changed_rows VALUES(1,'makers','orrin',NULL,'{"maker":"orrin","name":"Orrin \u0026 Daughters"}');
INSERT INTO changed_rows VALUES(1,'parts','orrin:B-77',NULL,'{"part":"orrin:B-77","kind":"bush","name":"Plain bush","evidence":"ev-0001"}');
INSERT INTO changed_rows VALUES(1,'rules','bush,bore,stops',NULL,'{"kind":"bush","feature":"bore","effect":"stops","relation":"same","allowance":"0.01","unit":"mm","consequence":"damage"}');
INSERT INTO changed_rows VALUES(1,'rules','bush,bore,work',NULL,'{"kind":"bush","feature":"bore","effect":"work","relation":"at-most","work":"ream-bush","consequence":"loss"}');
INSERT INTO changed_rows VALUES(1,'rules','bush,lining,alters',NULL,'{"kind":"bush","feature":"lining","effect":"alters","relation":"covers","consequence":"nuisance"}');
INSERT INTO changed_rows VALUES(1,'rules','shaft,nose,stops',NULL,'{"kind":"shaft","feature":"nose","effect":"stops","relation":"same","consequence":"injury","note":"two words, a comma"}');
INSERT INTO changed_rows VALUES(1,'shots','shaft,mark',NULL,'{"kind":"shaft","shot":"mark","name":"stamped mark"}');
INSERT INTO changed_rows VALUES(1,'shots','shaft,whole',NULL,'{"kind":"shaft","shot":"whole","name":"whole shaft beside a ruler","shows":"nose|outer","how":"lay it flat, a ruler along it, camera square on"}');
INSERT INTO changed_rows VALUES(1,'works','ream-bush',NULL,'{"work":"ream-bush","name":"ream the bush","minutes":"30","days":"1.5","price":"40.00","currency":"EUR","who":"machine shop","needs_first":"bush|shaft","changes":"bush.bore","undo":"no","cautions":"tightening"}');
INSERT INTO changed_rows VALUES(2,'access','front-bush',NULL,'{"position":"front-bush","minutes":"95.5","how":"sump and front cover off"}');
INSERT INTO changed_rows VALUES(2,'access','injector',NULL,'{"position":"injector","minutes":"0"}');
INSERT INTO changed_rows VALUES(2,'book','lark-2',NULL,'{"format":"1","book":"lark-2","kind":"family","title":"Lark 2","maker":"marl","uses":"shared","licence":"CC0-1.0"}');
INSERT INTO changed_rows VALUES(2,'companions','tang-needs-bush',NULL,'{"companion":"tang-needs-bush","when_position":"main-shaft","when_feature":"nose","when_relation":"same","when_value":"tang","then_position":"front-bush","then_feature":"bore","then_relation":"at-least","then_value":"25.3","then_unit":"mm","evidence":"ev-0001"}');
INSERT INTO changed_rows VALUES(2,'companions','tang-needs-injector',NULL,'{"companion":"tang-needs-injector","when_position":"main-shaft","when_feature":"nose","when_relation":"one-of","when_value":"plain|tang","then_position":"injector","then_feature":"present","then_relation":"same","then_value":"yes","variants":"lb"}');
INSERT INTO changed_rows VALUES(2,'contents','marl:S-100,marl:B-1/2',NULL,'{"set":"marl:S-100","part":"marl:B-1/2","quantity":"2","certain":"yes"}');
INSERT INTO changed_rows VALUES(2,'contents','marl:S-100,marl:B-1/3',NULL,'{"set":"marl:S-100","part":"marl:B-1/3","certain":"possible"}');
INSERT INTO changed_rows VALUES(2,'curves','marl:I-1,dead-time,12.0,3.0,ev-0001',NULL,'{"part":"marl:I-1","curve":"dead-time","x":"12.0","x_unit":"V","y":"3.0","y_unit":"bar","value":"1.10","unit":"ms","evidence":"ev-0001"}');
INSERT INTO changed_rows VALUES(2,'curves','marl:I-1,dead-time,14.0,3.0,ev-0001',NULL,'{"part":"marl:I-1","curve":"dead-time","x":"14.0","x_unit":"V","y":"3.0","y_unit":"bar","value":"0.92","unit":"ms","evidence":"ev-0001"}');
INSERT INTO changed_rows VALUES(2,'engine','la,bore',NULL,'{"variant":"la","property":"bore","value":"85.00","minus":"0.00","plus":"0.02","unit":"mm","evidence":"ev-0001"}');
INSERT INTO changed_rows VALUES(2,'engine','la,cylinders',NULL,'{"variant":"la","property":"cylinders","value":"2","evidence":"ev-0001"}');
INSERT INTO changed_rows VALUES(2,'engine','la,fuel-system',NULL,'{"variant":"la","property":"fuel-system","value":"port-injected"}');
INSERT INTO changed_rows VALUES(2,'evidence','ev-0001',NULL,'{"evidence":"ev-0001","grade":"makers-document","date":"2019-04-01","source":"parts list"}');
INSERT INTO changed_rows VALUES(2,'evidence','ev-0002',NULL,'{"evidence":"ev-0002","grade":"measured","date":"2026-02-14","author":"bench 2","source":"bench sheet 17"}');
INSERT INTO changed_rows VALUES(2,'evidence','ev-0003',NULL,'{"evidence":"ev-0003","grade":"reported","date":"2026-03","source":"copied","derived_from":"ev-0002","retracted_on":"2026-04-01","retracted_why":"wrong part"}');
INSERT INTO changed_rows VALUES(2,'evidence','ev-0004',NULL,'{"evidence":"ev-0004","grade":"ran-under-load","date":"2026-05-02","author":"bench 2","source":"log of the brake stand"}');
INSERT INTO changed_rows VALUES(2,'evidence','ev-0005',NULL,'{"evidence":"ev-0005","grade":"measured","date":"2026-05-03","author":"bench 2","source":"sheet of the donor"}');
INSERT INTO changed_rows VALUES(2,'findings','fi-0001',NULL,'{"finding":"fi-0001","part":"marl:B-1/2","variant":"la","position":"front-bush","axis":"mounts","outcome":"with-work","serial_to":"20000","with":"injector=none|main-shaft=marl:S-100","evidence":"ev-0001"}');
INSERT INTO changed_rows VALUES(2,'findings','fi-0002',NULL,'{"finding":"fi-0002","part":"marl:S-100","variant":"lb","position":"main-shaft","axis":"runs","outcome":"same","evidence":"ev-0004"}');
INSERT INTO changed_rows VALUES(2,'findings','fi-0003',NULL,'{"finding":"fi-0003","part":"none","variant":"la","position":"injector","axis":"runs","outcome":"differently","built_from":"2015-03","built_to":"2016-12","evidence":"ev-0003"}');
INSERT INTO changed_rows VALUES(2,'fitments','la,front-bush,marl:B-1/2,,,,20000',NULL,'{"variant":"la","position":"front-bush","part":"marl:B-1/2","serial_to":"20000","quantity":"1","evidence":"ev-0001"}');
INSERT INTO changed_rows VALUES(2,'fitments','la,front-bush,marl:B-1/3,,,20001,',NULL,'{"variant":"la","position":"front-bush","part":"marl:B-1/3","serial_from":"20001","mark":"wide flange","quantity":"1","evidence":"ev-0001"}');
INSERT INTO changed_rows VALUES(2,'fitments','la,injector,marl:I-1,,,,',NULL,'{"variant":"la","position":"injector","part":"marl:I-1","quantity":"2"}');
INSERT INTO changed_rows VALUES(2,'fitments','lb,injector,none,,,,',NULL,'{"variant":"lb","position":"injector","part":"none","quantity":"0","evidence":"ev-0001"}');
INSERT INTO changed_rows VALUES(2,'fitments','lb,main-shaft,marl:S-100,2016-05,2017-06-01,,',NULL,'{"variant":"lb","position":"main-shaft","part":"marl:S-100","built_from":"2016-05","built_to":"2017-06-01","quantity":"1","evidence":"ev-0001"}');
INSERT INTO changed_rows VALUES(2,'items','it-0001',NULL,'{"item":"it-0001","part":"marl:S-100","origin":"donor","condition":"turned once by hand","evidence":"ev-0005"}');
INSERT INTO changed_rows VALUES(2,'items','it-0002',NULL,'{"item":"it-0002","part":"marl:I-1"}');
INSERT INTO changed_rows VALUES(2,'joints','shaft-in-bush',NULL,'{"joint":"shaft-in-bush","left_position":"main-shaft","left_feature":"outer","relation":"band","right_position":"front-bush","right_feature":"bore","min":"0.005","unit":"mm","effect":"work","work":"ream-bush","consequence":"damage","variants":"la|lb","evidence":"ev-0001"}');
INSERT INTO changed_rows VALUES(2,'limits','bush,grooves,',NULL,'{"kind":"bush","feature":"grooves","min":"2","consequence":"loss"}');
INSERT INTO changed_rows VALUES(2,'limits','shaft,outer,',NULL,'{"kind":"shaft","feature":"outer","min":"24.95","max":"25.00","unit":"mm","consequence":"damage","evidence":"ev-0001"}');
INSERT INTO changed_rows VALUES(2,'limits','shaft,outer,marl:S-100',NULL,'{"kind":"shaft","feature":"outer","part":"marl:S-100","min":"24.97","unit":"mm","consequence":"damage","evidence":"ev-0001"}');
INSERT INTO changed_rows VALUES(2,'makers','marl',NULL,'{"maker":"marl","name":"Marl Engines"}');
INSERT INTO changed_rows VALUES(2,'needs','la,front-bush,bore,work',NULL,'{"variant":"la","position":"front-bush","feature":"bore","effect":"work","relation":"at-most","value":"25.45","minus":"0","plus":"0","unit":"mm","evidence":"ev-0001"}');
INSERT INTO changed_rows VALUES(2,'needs','la,injector,fuel,stops',NULL,'{"variant":"la","position":"injector","feature":"fuel","effect":"stops","relation":"one-of","value":"e85|petrol"}');
INSERT INTO changed_rows VALUES(2,'needs','lb,main-shaft,present,stops',NULL,'{"variant":"lb","position":"main-shaft","feature":"present","effect":"stops","relation":"same","value":"yes"}');
INSERT INTO changed_rows VALUES(2,'numbers','orrin:CAST 9,marl:B-1/2',NULL,'{"number":"orrin:CAST 9","sort":"casting-mark","part":"marl:B-1/2"}');
INSERT INTO changed_rows VALUES(2,'numbers','orrin:CAST 9,marl:B-1/3',NULL,'{"number":"orrin:CAST 9","sort":"casting-mark","part":"marl:B-1/3"}');
INSERT INTO changed_rows VALUES(2,'numbers','orrin:S100,marl:I-1',NULL,'{"number":"orrin:S100","sort":"supplier","part":"marl:I-1"}');
INSERT INTO changed_rows VALUES(2,'pairs','marl:B-1/2,orrin:B-77',NULL,'{"part_a":"marl:B-1/2","part_b":"orrin:B-77","judgement":"trap","evidence":"ev-0001","note":"the oil hole is missing"}');
INSERT INTO changed_rows VALUES(2,'pairs','marl:S-100,marl:B-1/2',NULL,'{"part_a":"marl:S-100","part_b":"marl:B-1/2","judgement":"harmless","evidence":"ev-0003"}');
INSERT INTO changed_rows VALUES(2,'parts','marl:B-1/2',NULL,'{"part":"marl:B-1/2","kind":"bush","name":"Front bush","note":"first line\nsecond \u0022line\u0022, with a comma","evidence":"ev-0001"}');
INSERT INTO changed_rows VALUES(2,'parts','marl:B-1/3',NULL,'{"part":"marl:B-1/3","kind":"bush","name":"Front bush wide"}');
INSERT INTO changed_rows VALUES(2,'parts','marl:I-1',NULL,'{"part":"marl:I-1","kind":"injector","name":"Injector","evidence":"ev-0002"}');
INSERT INTO changed_rows VALUES(2,'parts','marl:S-100',NULL,'{"part":"marl:S-100","kind":"shaft","name":"Main shaft","note":"Gr\u00FC\u00DFe \u2013 \u00BD \u03A9","evidence":"ev-0001"}');
INSERT INTO changed_rows VALUES(2,'photos','ph-0001',NULL,'{"photo":"ph-0001","image":"e124007e0371a272f11e7fbc2414aff5a1095f3a46ad29771ea1bf3f8a5b07ca.png","evidence":"ev-0005","item":"it-0001","caption":"the tang"}');
INSERT INTO changed_rows VALUES(2,'positions','front-bush',NULL,'{"position":"front-bush","name":"Front bush","group":"bottom-end","kind":"bush"}');
INSERT INTO changed_rows VALUES(2,'positions','injector',NULL,'{"position":"injector","name":"Injector","group":"fuel","kind":"injector","role":"injector"}');
INSERT INTO changed_rows VALUES(2,'positions','main-shaft',NULL,'{"position":"main-shaft","name":"Main shaft","group":"bottom-end","kind":"shaft"}');
INSERT INTO changed_rows VALUES(2,'readings','it-0001,nose',NULL,'{"item":"it-0001","feature":"nose","value":"tang","read_on":"2026-05-03"}');
INSERT INTO changed_rows VALUES(2,'readings','it-0001,outer',NULL,'{"item":"it-0001","feature":"outer","value":"24.985","unit":"mm","uncertainty":"0.004","instrument":"outside micrometer 25-50","read_on":"2026-05-03","evidence":"ev-0005","note":"smallest of six"}');
INSERT INTO changed_rows VALUES(2,'selects','front-bush,24.980,marl:B-1/2',NULL,'{"position":"front-bush","measure_position":"main-shaft","measure_feature":"outer","from":"24.980","to":"24.990","unit":"mm","part":"marl:B-1/2","evidence":"ev-0001"}');
INSERT INTO changed_rows VALUES(2,'sellers','millrace',NULL,'{"seller":"millrace","name":"Millrace Breakers","country":"GB","currency":"GBP","shipping_fixed":"9.50","shipping_per_item":"1.20","free_from":"120.00","import_charge":"4.5","days_min":"3","days_max":"6","returns_days":"14","restocking":"15"}');
INSERT INTO changed_rows VALUES(2,'sources','ev-0001',NULL,'{"evidence":"ev-0001","speaks_of":"number","page":"page 12"}');
INSERT INTO changed_rows VALUES(2,'sources','ev-0004',NULL,'{"evidence":"ev-0004","speaks_of":"number","hours":"41.5","output":"12.0","output_unit":"kW","fuel":"petrol","note":"flat out, two heats"}');
INSERT INTO changed_rows VALUES(2,'sources','ev-0005',NULL,'{"evidence":"ev-0005","speaks_of":"item","instrument":"outside micrometer 25-50"}');
INSERT INTO changed_rows VALUES(2,'stacks','bush-clearance',NULL,'{"stack":"bush-clearance","terms":"\u002Bfront-bush.bore|-main-shaft.outer|\u002B1.5","min":"0.01","max":"0.05","unit":"mm","effect":"stops","consequence":"injury","evidence":"ev-0001"}');
INSERT INTO changed_rows VALUES(2,'supersessions','marl:B-1/2,marl:B-1/3',NULL,'{"old_part":"marl:B-1/2","new_part":"marl:B-1/3","way":"one","quantity":"1","with":"marl:S-100|orrin:B-77","serial_from":"20001","variants":"la","evidence":"ev-0003"}');
INSERT INTO changed_rows VALUES(2,'values','marl:B-1/2,bore,ev-0001',NULL,'{"part":"marl:B-1/2","feature":"bore","value":"25.400","minus":"0.005","plus":"0.010","unit":"mm","uncertainty":"0.001","evidence":"ev-0001"}');
INSERT INTO changed_rows VALUES(2,'values','marl:B-1/2,bore,ev-0002',NULL,'{"part":"marl:B-1/2","feature":"bore","value":"25.41","unit":"mm","uncertainty":"0.005","evidence":"ev-0002"}');
INSERT INTO changed_rows VALUES(2,'values','marl:B-1/2,grooves,ev-0001',NULL,'{"part":"marl:B-1/2","feature":"grooves","value":"2","evidence":"ev-0001"}');
INSERT INTO changed_rows VALUES(2,'values','marl:B-1/2,lining,',NULL,'{"part":"marl:B-1/2","feature":"lining","value":"bronze|tin"}');
INSERT INTO changed_rows VALUES(2,'values','marl:I-1,length,ev-0002',NULL,'{"part":"marl:I-1","feature":"length","value":"2.047","unit":"in","evidence":"ev-0002"}');
INSERT INTO changed_rows VALUES(2,'values','marl:S-100,nose,ev-0001',NULL,'{"part":"marl:S-100","feature":"nose","value":"tang","evidence":"ev-0001"}');
INSERT INTO changed_rows VALUES(2,'values','marl:S-100,outer,ev-0001',NULL,'{"part":"marl:S-100","feature":"outer","value":"-0.5","minus":"0","plus":"0","unit":"mm","evidence":"ev-0001"}');
INSERT INTO changed_rows VALUES(2,'variants','la',NULL,'{"variant":"la","name":"LA pump set","built_from":"2015-03","built_to":"2018-11-30","serial_from":"100","serial_to":"41206","evidence":"ev-0001"}');
INSERT INTO changed_rows VALUES(2,'variants','lb',NULL,'{"variant":"lb","name":"LB cart","serial_from":"41207"}');
INSERT INTO changed_rows VALUES(2,'works-done','it-0001,ream-bush',NULL,'{"item":"it-0001","work":"ream-bush","done_on":"2026-05-04"}');
INSERT INTO changed_rows VALUES(3,'variants','la','{"variant":"la","name":"LA pump set","built_from":"2015-03","built_to":"2018-11-30","serial_from":"100","serial_to":"41206","evidence":"ev-0001"}','{"variant":"la","name":"LA pump","built_from":"2015-03","built_to":"2018-11-30","serial_from":"100","serial_to":"41206","evidence":"ev-0001"}');
INSERT INTO changed_rows VALUES(4,'variants','la','{"variant":"la","name":"LA pump","built_from":"2015-03","built_to":"2018-11-30","serial_from":"100","serial_to":"41206","evidence":"ev-0001"}','{"variant":"la","name":"LA pump set","built_from":"2015-03","built_to":"2018-11-30","serial_from":"100","serial_to":"41206","evidence":"ev-0001"}');
INSERT INTO changed_rows VALUES(5,'torques','la,front-bush,ev-0001,1,,,,',NULL,'{"variant":"la","position":"front-bush","pass":"1","value":"20","minus":"2","plus":"2","unit":"N\u00B7m","lubrication":"oiled","sequence":"crosswise from the middle","single_use":"stretch","evidence":"ev-0001"}');
INSERT INTO changed_rows VALUES(6,'torques','la,front-bush,ev-0001,2,,,,',NULL,'{"variant":"la","position":"front-bush","pass":"2","value":"90","unit":"deg","evidence":"ev-0001","note":"with a disc, not by eye"}');
INSERT INTO changed_rows VALUES(7,'torques','la,front-bush,ev-0003,1,,,,',NULL,'{"variant":"la","position":"front-bush","pass":"1","value":"15.5","unit":"lbf\u00B7ft","evidence":"ev-0003"}');
INSERT INTO changed_rows VALUES(9,'openings','front-bush,injector,',NULL,'{"position":"front-bush","off_first":"injector"}');
INSERT INTO changed_rows VALUES(9,'openings','front-bush,main-shaft,la',NULL,'{"position":"front-bush","off_first":"main-shaft","variants":"la","evidence":"ev-0001","note":"pressed against its collar"}');
INSERT INTO changed_rows VALUES(9,'openings','main-shaft,injector,',NULL,'{"position":"main-shaft","off_first":"injector","evidence":"ev-0001"}');
INSERT INTO changed_rows VALUES(9,'renewals','front-bush,main-shaft,la|lb',NULL,'{"opened":"front-bush","renewed":"main-shaft","variants":"la|lb","evidence":"ev-0001"}');
INSERT INTO changed_rows VALUES(9,'renewals','main-shaft,injector,',NULL,'{"opened":"main-shaft","renewed":"injector","amount":"12.5","unit":"mL","bead":"2 mm, inside the bolt holes","cure_hours":"24","evidence":"ev-0001","note":"degrease first"}');
INSERT INTO changed_rows VALUES(9,'weak-points','bush-creeps',NULL,'{"weak_point":"bush-creeps","variant":"la","position":"front-bush","what":"The bush creeps outwards.","remedy_part":"marl:B-1/3","remedy_work":"ream-bush","built_from":"2015-03","serial_to":"20000","evidence":"ev-0001","note":"seen on two"}');
INSERT INTO changed_rows VALUES(10,'reminders','bush,ream',NULL,'{"kind":"bush","reminder":"ream","at":"worked","works":"ream-bush","text":"Reamed in line, and washed?","evidence":"ev-0001"}');
INSERT INTO changed_rows VALUES(10,'reminders','injector,leak',NULL,'{"kind":"injector","reminder":"leak","at":"start","text":"Does it leak?","note":"common practice, no source"}');
INSERT INTO changed_rows VALUES(11,'bench-order','front-bush,injector,',NULL,'{"first":"front-bush","then":"injector"}');
INSERT INTO changed_rows VALUES(11,'bench-order','front-bush,main-shaft,la',NULL,'{"first":"front-bush","then":"main-shaft","how":"on-bench","variants":"la","evidence":"ev-0001","note":"pressed in, cold"}');
INSERT INTO changed_rows VALUES(11,'bench-order','main-shaft,injector,',NULL,'{"first":"main-shaft","then":"injector","how":"into"}');
CREATE TABLE images (
  image text not null primary key,
  bytes blob not null,
  -- as shown, upright
  width integer not null check (width >= 1),
  height integer not null check (height >= 1),
  -- UTC, ISO 8601
  stored_at text not null
) strict;
INSERT INTO images VALUES('e124007e0371a272f11e7fbc2414aff5a1095f3a46ad29771ea1bf3f8a5b07ca.png',X'89504E470D0A1A0A0000000D49484452000000010000000108000000003A7E9B550000000A4944415478DA6368000000820081DA45083B0000000049454E44AE426082',1,1,'2026-11-26T12:45:09Z');
CREATE TABLE limits (
  book text not null references books (book) deferrable initially deferred,
  kind text not null,
  feature text not null,
  -- empty where the limit holds for the whole kind
  part text not null,
  min text,
  max text,
  unit text,
  consequence text not null check (consequence in ('nuisance', 'loss', 'damage', 'injury')),
  evidence text,
  note text,
  -- computed
  kind_book text not null,
  part_key text references parts (part_key) deferrable initially deferred,
  evidence_book text,
  primary key (book, kind, feature, part),
  foreign key (kind_book, kind) references kinds (book, kind) deferrable initially deferred,
  foreign key (evidence_book, evidence) references evidence (book, evidence) deferrable initially deferred
) strict, without rowid;
INSERT INTO limits VALUES('lark-2','bush','grooves','','2',NULL,NULL,'loss',NULL,NULL,'shared',NULL,NULL);
INSERT INTO limits VALUES('lark-2','shaft','outer','','24.95','25.00','mm','damage','ev-0001',NULL,'shared',NULL,'lark-2');
INSERT INTO limits VALUES('lark-2','shaft','outer','marl:S-100','24.97',NULL,'mm','damage','ev-0001',NULL,'shared','marl:S100','lark-2');
CREATE TABLE listings (
  book text not null references books (book) deferrable initially deferred,
  -- SHA-256 of the text
  listing text not null,
  seen_on text not null,
  title text,
  address text,
  text text not null,
  primary key (book, listing)
) strict;
INSERT INTO listings VALUES('lark-2','f10b07c45b46af7f662b16051f901e0fb4298780ea33e873ae474e14f2c1d42d','2026-06-01','Front bush','https://millrace.example/9','Front bush, used
Number B 1.2, "as photographed"
oil in the bore');
CREATE TABLE offers (
  book text not null references books (book) deferrable initially deferred,
  offer text not null,
  seller text not null,
  part text,
  number_as_written text,
  price text not null,
  currency text not null,
  pack text,
  stock text,
  condition text check (condition in ('new', 'refurbished', 'used', 'damaged')),
  level text check (level in ('bare', 'short', 'long', 'complete', 'heard-running')),
  core_deposit text,
  seen_on text not null,
  days_min text,
  days_max text,
  shipping text,
  note text,
  core_part text,
  returns_days text,
  restocking text,
  freight_back text check (freight_back in ('buyer', 'seller')),
  returnable text check (returnable in ('no', 'yes')),
  listing text,
  -- computed; part_key is null where no book has the number
  part_key text references parts (part_key) deferrable initially deferred,
  seller_book text not null,
  primary key (book, offer),
  check (part is not null or number_as_written is not null),
  foreign key (seller_book, seller) references sellers (book, seller) deferrable initially deferred,
  foreign key (book, listing) references listings (book, listing) deferrable initially deferred
) strict, without rowid;
INSERT INTO offers VALUES('lark-2','of-0001','millrace','marl:B-1/2','B 1.2','84.00','GBP','2','4','used',NULL,'20.00','2026-06-01','3','6',NULL,'oil in the bore, wipes out','the old bush','30','10','buyer','yes','f10b07c45b46af7f662b16051f901e0fb4298780ea33e873ae474e14f2c1d42d','marl:B12','lark-2');
INSERT INTO offers VALUES('lark-2','of-0002','millrace','marl:S-100',NULL,'1250','EUR','1',NULL,'refurbished','bare',NULL,'2026-05-01',NULL,NULL,'12.50',NULL,NULL,NULL,NULL,'seller','no',NULL,'marl:S100','lark-2');
INSERT INTO offers VALUES('lark-2','of-0003','millrace',NULL,'QZ-77','12.5','EUR',NULL,NULL,NULL,NULL,NULL,'2026-06-02',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'lark-2');
CREATE TABLE seller_deliveries (
  seller text not null primary key,
  deliveries integer not null check (deliveries between 0 and 2147483647),
  wrong integer not null check (wrong between 0 and deliveries)
) strict, without rowid;
INSERT INTO seller_deliveries VALUES('millrace',12,1);
CREATE TABLE torques (
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
INSERT INTO torques VALUES('lark-2','la','front-bush','1','','','','','20','2','2','N·m','oiled','crosswise from the middle','stretch','ev-0001',NULL,'lark-2');
INSERT INTO torques VALUES('lark-2','la','front-bush','2','','','','','90',NULL,NULL,'deg',NULL,NULL,NULL,'ev-0001','with a disc, not by eye','lark-2');
INSERT INTO torques VALUES('lark-2','la','front-bush','1','','','','','15.5',NULL,NULL,'lbf·ft',NULL,NULL,NULL,'ev-0003',NULL,'lark-2');
CREATE TABLE build_versions (
  build text not null,
  version integer not null check (version > 0),
  act text not null check (act in ('create', 'edit', 'delete', 'restore')),
  at text not null,
  who text,
  why text,
  -- the version that is there again
  restores integer,
  -- null where the build was deleted
  document text,
  primary key (build, version),
  check ((act = 'delete') = (document is null)),
  check ((act = 'restore') = (restores is not null)),
  foreign key (build, restores) references build_versions (build, version) deferrable initially deferred
) strict;
INSERT INTO build_versions VALUES('spare-lark',1,'create','2026-11-02T08:15:00.000Z','Ada',NULL,NULL,'{
  "code": "spare-lark",
  "title": "A spare",
  "family": "lark-2",
  "donor": {
    "variant": "la",
    "states": [
      {
        "position": "front-bush",
        "state": "damaged",
        "note": "worn by 0.4 mm"
      }
    ]
  },
  "currency": "EUR",
  "wishes": [
    {
      "position": "front-bush",
      "like": [],
      "parts": [],
      "refuse": [],
      "keep": "renew",
      "onlyNew": true,
      "admitNotKnown": false
    }
  ],
  "admitNotKnown": false,
  "inHand": [],
  "works": [],
  "refusedSellers": [],
  "rates": [
    {
      "currency": "GBP",
      "is": "1.1700",
      "from": "the bank, 2026-11-02"
    }
  ],
  "budget": "120.00"
}
');
INSERT INTO build_versions VALUES('spare-lark',2,'edit','2026-11-02T08:21:07.250Z','Ada','the name',NULL,'{
  "code": "spare-lark",
  "title": "A spare engine",
  "family": "lark-2",
  "donor": {
    "variant": "la",
    "states": [
      {
        "position": "front-bush",
        "state": "damaged",
        "note": "worn by 0.4 mm"
      }
    ]
  },
  "currency": "EUR",
  "wishes": [
    {
      "position": "front-bush",
      "like": [],
      "parts": [],
      "refuse": [],
      "keep": "renew",
      "onlyNew": true,
      "admitNotKnown": false
    }
  ],
  "admitNotKnown": false,
  "inHand": [],
  "works": [],
  "refusedSellers": [],
  "rates": [
    {
      "currency": "GBP",
      "is": "1.1700",
      "from": "the bank, 2026-11-02"
    }
  ],
  "budget": "120.00"
}
');
INSERT INTO build_versions VALUES('spare-lark',3,'delete','2026-11-03T19:00:00.000Z','Bo',NULL,NULL,NULL);
INSERT INTO build_versions VALUES('spare-lark',4,'restore','2026-11-03T19:02:30.500Z','Bo','not that one',2,'{
  "code": "spare-lark",
  "title": "A spare engine",
  "family": "lark-2",
  "donor": {
    "variant": "la",
    "states": [
      {
        "position": "front-bush",
        "state": "damaged",
        "note": "worn by 0.4 mm"
      }
    ]
  },
  "currency": "EUR",
  "wishes": [
    {
      "position": "front-bush",
      "like": [],
      "parts": [],
      "refuse": [],
      "keep": "renew",
      "onlyNew": true,
      "admitNotKnown": false
    }
  ],
  "admitNotKnown": false,
  "inHand": [],
  "works": [],
  "refusedSellers": [],
  "rates": [
    {
      "currency": "GBP",
      "is": "1.1700",
      "from": "the bank, 2026-11-02"
    }
  ],
  "budget": "120.00"
}
');
INSERT INTO build_versions VALUES('spare-larch',1,'create','2026-11-03T19:04:00.000Z',NULL,NULL,NULL,'{
  "code": "spare-larch",
  "title": "Another",
  "family": "lark-2",
  "donor": {
    "variant": "la",
    "states": [
      {
        "position": "front-bush",
        "state": "damaged",
        "note": "worn by 0.4 mm"
      }
    ]
  },
  "currency": "EUR",
  "wishes": [
    {
      "position": "front-bush",
      "like": [],
      "parts": [],
      "refuse": [],
      "keep": "renew",
      "onlyNew": true,
      "admitNotKnown": false
    }
  ],
  "admitNotKnown": false,
  "inHand": [],
  "works": [],
  "refusedSellers": [],
  "rates": [
    {
      "currency": "GBP",
      "is": "1.1700",
      "from": "the bank, 2026-11-02"
    }
  ],
  "budget": "120.00"
}
');
INSERT INTO build_versions VALUES('spare-larch',2,'delete','2026-11-03T19:05:00.000Z',NULL,NULL,NULL,NULL);
CREATE TABLE openings (
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
INSERT INTO openings VALUES('lark-2','front-bush','injector','',NULL,NULL,NULL);
INSERT INTO openings VALUES('lark-2','front-bush','main-shaft','la','ev-0001','pressed against its collar','lark-2');
INSERT INTO openings VALUES('lark-2','main-shaft','injector','','ev-0001',NULL,'lark-2');
CREATE TABLE renewals (
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
INSERT INTO renewals VALUES('lark-2','front-bush','main-shaft',NULL,NULL,NULL,NULL,'la|lb','ev-0001',NULL,'lark-2');
INSERT INTO renewals VALUES('lark-2','main-shaft','injector','12.5','mL','2 mm, inside the bolt holes','24','','ev-0001','degrease first','lark-2');
CREATE TABLE weak_points (
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
INSERT INTO weak_points VALUES('lark-2','bush-creeps','la','front-bush','The bush creeps outwards.','marl:B-1/3','ream-bush','2015-03',NULL,NULL,'20000','ev-0001','seen on two','marl:B13','shared','lark-2');
CREATE TABLE bench_order (
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
INSERT INTO bench_order VALUES('lark-2','front-bush','injector',NULL,'',NULL,NULL,NULL);
INSERT INTO bench_order VALUES('lark-2','front-bush','main-shaft','on-bench','la','ev-0001','pressed in, cold','lark-2');
INSERT INTO bench_order VALUES('lark-2','main-shaft','injector','into','',NULL,NULL,NULL);
CREATE TABLE reminders (
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
INSERT INTO reminders VALUES('shared','bush','ream','worked','ream-bush','Reamed in line, and washed?','ev-0001',NULL,'shared','shared');
INSERT INTO reminders VALUES('shared','injector','leak','start',NULL,'Does it leak?',NULL,'common practice, no source','shared',NULL);
CREATE TABLE "order_events" (
  build text not null,
  since integer not null check (since > 0),
  order_number integer not null check (order_number > 0),
  event integer not null check (event > 0),
  act text not null check (act in (
    'ordered', 'paid', 'arrived', 'checked', 'wrong', 'returned', 'refunded', 'cancelled', 'deposit-back', 'deposit-kept', 'charged', 'withdrawn')),
  at text not null,
  who text,
  why text,
  document text not null,
  primary key (build, since, order_number, event),
  check ((act = 'ordered') = (event = 1))
) strict;
INSERT INTO order_events VALUES('cart',1,1,1,'ordered','2026-11-04T12:00:00.000Z','Ada','needed','{
  "act": "ordered",
  "on": "2026-11-02",
  "inPart": false,
  "seen": [],
  "terms": {
    "seller": "common/millrace",
    "orderedOn": "2026-11-02",
    "currency": "EUR",
    "sending": "9.00",
    "lines": [
      {
        "part": "marl:B-1/2",
        "name": "A bolt",
        "pieces": 1,
        "price": "96.00",
        "import": "0.00",
        "isNew": true,
        "for": []
      }
    ]
  }
}');
INSERT INTO order_events VALUES('cart',1,2,1,'ordered','2026-11-04T12:00:00.000Z','Ada','needed','{
  "act": "ordered",
  "on": "2026-11-02",
  "inPart": false,
  "seen": [],
  "terms": {
    "seller": "common/millrace",
    "orderedOn": "2026-11-02",
    "currency": "EUR",
    "sending": "9.00",
    "lines": [
      {
        "part": "marl:B-1/2",
        "name": "A bolt",
        "pieces": 1,
        "price": "96.00",
        "import": "0.00",
        "isNew": true,
        "for": []
      }
    ]
  }
}');
INSERT INTO order_events VALUES('cart',1,1,2,'checked','2026-11-04T12:00:00.000Z','Ada','needed','{
  "act": "checked",
  "on": "2026-11-03",
  "inPart": false,
  "seen": []
}');
INSERT INTO order_events VALUES('cart',1,2,2,'paid','2026-11-04T12:00:00.000Z','Ada','needed','{
  "act": "paid",
  "on": "2026-11-03",
  "inPart": false,
  "seen": []
}');
INSERT INTO order_events VALUES('cart',1,2,3,'wrong','2026-11-04T12:00:00.000Z',NULL,NULL,'{
  "act": "wrong",
  "on": "2026-11-04",
  "inPart": false,
  "fault": "other-part",
  "sent": "marl:S-100",
  "seen": []
}');
INSERT INTO order_events VALUES('cart',1,2,4,'deposit-kept','2026-11-05T12:00:00.000Z','Ada',NULL,'{
  "act": "deposit-kept",
  "on": "2026-11-05",
  "amount": "4.00"
}');
INSERT INTO order_events VALUES('cart',1,2,5,'charged','2026-11-05T12:01:00.000Z','Ada','as agreed','{
  "act": "charged",
  "on": "2026-11-05",
  "amount": "2.50"
}');
INSERT INTO order_events VALUES('spare-larch',3,1,1,'ordered','2026-11-04T12:00:00.000Z','Ada','needed','{
  "act": "ordered",
  "on": "2026-11-02",
  "inPart": false,
  "seen": [],
  "terms": {
    "seller": "common/millrace",
    "orderedOn": "2026-11-02",
    "currency": "EUR",
    "sending": "9.00",
    "lines": [
      {
        "part": "marl:B-1/2",
        "name": "A bolt",
        "pieces": 1,
        "price": "96.00",
        "import": "0.00",
        "isNew": true,
        "for": []
      }
    ]
  }
}');
CREATE TABLE "deliveries" (
  build text not null,
  since integer not null check (since > 0),
  order_number integer not null,
  line integer not null check (line > 0),
  seller text,
  asked_part_key text not null,
  -- null where the ordered part came, or one whose number no book has
  sent_part_key text,
  other_part integer not null check (other_part in (0, 1)),
  primary key (build, since, order_number, line)
) strict, without rowid;
INSERT INTO deliveries VALUES('cart',1,1,1,'millrace','marl:B12',NULL,0);
INSERT INTO deliveries VALUES('cart',1,2,1,'millrace','marl:B12','marl:S100',1);
CREATE INDEX book_uses_used on book_uses (used);
CREATE INDEX evidence_derived_from on evidence (derived_from_book, derived_from);
CREATE INDEX features_kind on features (kind_book, kind);
CREATE INDEX rules_kind on rules (kind_book, kind);
CREATE INDEX rules_work on rules (work_book, work);
CREATE INDEX checks_kind on checks (kind_book, kind);
CREATE UNIQUE INDEX parts_part_key on parts (part_key);
CREATE INDEX parts_number_key on parts (number_key);
CREATE INDEX parts_kind on parts (kind_book, kind);
CREATE INDEX parts_kind_code on parts (kind);
CREATE INDEX parts_evidence on parts (evidence_book, evidence);
CREATE INDEX numbers_number_key on numbers (number_key);
CREATE INDEX numbers_part on numbers (part_key);
CREATE INDEX values_part on "values" (part_key);
CREATE INDEX values_evidence on "values" (evidence_book, evidence);
CREATE INDEX curves_part on curves (part_key);
CREATE INDEX curves_evidence on curves (evidence_book, evidence);
CREATE INDEX supersessions_old_part on supersessions (old_part_key);
CREATE INDEX supersessions_new_part on supersessions (new_part_key);
CREATE INDEX supersessions_evidence on supersessions (evidence_book, evidence);
CREATE INDEX contents_set on contents (set_key);
CREATE INDEX contents_part on contents (part_key);
CREATE INDEX variants_evidence on variants (evidence_book, evidence);
CREATE INDEX engine_evidence on engine (evidence_book, evidence);
CREATE INDEX positions_kind on positions (kind_book, kind);
CREATE INDEX fitments_position on fitments (book, position);
CREATE INDEX fitments_part on fitments (part_key);
CREATE INDEX fitments_evidence on fitments (evidence_book, evidence);
CREATE INDEX needs_position on needs (book, position);
CREATE INDEX needs_evidence on needs (evidence_book, evidence);
CREATE INDEX joints_left on joints (book, left_position);
CREATE INDEX joints_right on joints (book, right_position);
CREATE INDEX joints_work on joints (work_book, work);
CREATE INDEX joints_evidence on joints (evidence_book, evidence);
CREATE INDEX stacks_work on stacks (work_book, work);
CREATE INDEX stacks_evidence on stacks (evidence_book, evidence);
CREATE INDEX selects_measure_position on selects (book, measure_position);
CREATE INDEX selects_part on selects (part_key);
CREATE INDEX selects_evidence on selects (evidence_book, evidence);
CREATE INDEX companions_when on companions (book, when_position);
CREATE INDEX companions_then on companions (book, then_position);
CREATE INDEX companions_evidence on companions (evidence_book, evidence);
CREATE INDEX pairs_part_a on pairs (part_a_key);
CREATE INDEX pairs_part_b on pairs (part_b_key);
CREATE INDEX pairs_evidence on pairs (evidence_book, evidence);
CREATE INDEX shots_kind on shots (kind_book, kind);
CREATE INDEX findings_part on findings (part_key);
CREATE INDEX findings_variant on findings (book, variant);
CREATE INDEX findings_position on findings (book, position);
CREATE INDEX findings_evidence on findings (evidence_book, evidence);
CREATE INDEX sources_evidence on sources (evidence_book, evidence);
CREATE INDEX items_part on items (part_key);
CREATE INDEX items_evidence on items (evidence_book, evidence);
CREATE INDEX readings_evidence on readings (evidence_book, evidence);
CREATE INDEX works_done_work on works_done (work_book, work);
CREATE INDEX photos_item on photos (book, item);
CREATE INDEX photos_evidence on photos (evidence_book, evidence);
CREATE INDEX photos_image on photos (image);
CREATE INDEX changes_book on changes (book, change);
CREATE INDEX changed_rows_key on changed_rows ("table", "key", change);
CREATE INDEX limits_kind on limits (kind_book, kind);
CREATE INDEX limits_part on limits (part_key);
CREATE INDEX limits_evidence on limits (evidence_book, evidence);
CREATE INDEX offers_part on offers (part_key);
CREATE INDEX offers_seller on offers (seller_book, seller);
CREATE INDEX offers_listing on offers (book, listing);
CREATE INDEX torques_position on torques (book, position);
CREATE INDEX torques_evidence on torques (evidence_book, evidence);
CREATE INDEX build_versions_restores on build_versions (build, restores);
CREATE INDEX openings_off_first on openings (book, off_first);
CREATE INDEX openings_evidence on openings (evidence_book, evidence);
CREATE INDEX renewals_renewed on renewals (book, renewed);
CREATE INDEX renewals_evidence on renewals (evidence_book, evidence);
CREATE INDEX weak_points_variant on weak_points (book, variant);
CREATE INDEX weak_points_position on weak_points (book, position);
CREATE INDEX weak_points_remedy_part on weak_points (remedy_part_key);
CREATE INDEX weak_points_remedy_work on weak_points (remedy_work_book, remedy_work);
CREATE INDEX weak_points_evidence on weak_points (evidence_book, evidence);
CREATE INDEX bench_order_then on bench_order (book, "then");
CREATE INDEX bench_order_evidence on bench_order (evidence_book, evidence);
CREATE INDEX reminders_kind on reminders (kind_book, kind);
CREATE INDEX reminders_evidence on reminders (evidence_book, evidence);
pragma user_version = 16;
pragma application_id = 0x50415254;
commit;
