-- Builds: each is one JSON document. Every change, also deleting, is one row more: no row is ever changed or removed, so nothing is lost and all of it can be taken back.
create table build_versions (
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

create index build_versions_restores on build_versions (build, restores);
