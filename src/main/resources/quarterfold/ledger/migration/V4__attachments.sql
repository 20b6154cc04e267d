-- The documents that rows of sources name as their evidence, such as a receipt's picture: kept as
-- sources are, and theirs are the entries of the row.

create table attachment (
    id integer primary key,
    source integer not null references source deferrable initially deferred,
    row integer not null,
    file text not null, -- its name as the row has it
    sha256 text not null
) strict;

create index attachment_of_row on attachment (source, row);

create trigger attachment_is_not_updated before update on attachment
begin
    select raise(abort, 'the ledger only grows: a row of attachment is never changed');
end;

create trigger attachment_is_not_deleted before delete on attachment
begin
    select raise(abort, 'the ledger only grows: a row of attachment is never deleted');
end;

-- Last, so that a ledger with this number has everything above.
pragma user_version = 4;
