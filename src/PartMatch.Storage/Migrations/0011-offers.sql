-- What is for sale, and the words of the listing it was read from; and how often a seller sent something else than was ordered.

create table listings (
  book text not null references books (book) deferrable initially deferred,
  -- SHA-256 of the text
  listing text not null,
  seen_on text not null,
  title text,
  address text,
  text text not null,
  primary key (book, listing)
) strict;

create table offers (
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

create index offers_part on offers (part_key);
create index offers_seller on offers (seller_book, seller);
create index offers_listing on offers (book, listing);

-- Counts of what came, not part of any book: they outlive the seller's row, and are there again when it is.
create table seller_deliveries (
  seller text not null primary key,
  deliveries integer not null check (deliveries between 0 and 2147483647),
  wrong integer not null check (wrong between 0 and deliveries)
) strict, without rowid;
