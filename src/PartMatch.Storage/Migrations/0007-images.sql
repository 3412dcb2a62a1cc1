-- The pictures themselves, each once, under a name that is made of its bytes: rows that show one refer to it by that name.
-- With a rowid: rows of this size are slow in a table that is one index.
create table images (
  image text not null primary key,
  bytes blob not null,
  -- as shown, upright
  width integer not null check (width >= 1),
  height integer not null check (height >= 1),
  -- UTC, ISO 8601
  stored_at text not null
) strict;
