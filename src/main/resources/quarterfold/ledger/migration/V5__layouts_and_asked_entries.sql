-- The layout each file was read with, so that it can be read again as it was whatever became of the
-- layout since; and the entries that a question of a file about the kind of its rows is about.

create table layout_text (
    sha256 text primary key,
    text text not null
) strict;

create table source_layout (
    source integer primary key references source deferrable initially deferred,
    sha256 text not null references layout_text
) strict;

-- Runs of numbers: rows of a kind mostly stand together.
create table asked_entry (
    id integer primary key,
    source integer not null references source deferrable initially deferred,
    about text not null, -- as its query says in raised_query
    first_entry integer not null,
    last_entry integer not null check (last_entry >= first_entry)
) strict;

create index asked_entry_of_source on asked_entry (source);

create trigger layout_text_is_not_updated before update on layout_text
begin
    select raise(abort, 'the ledger only grows: a row of layout_text is never changed');
end;

create trigger layout_text_is_not_deleted before delete on layout_text
begin
    select raise(abort, 'the ledger only grows: a row of layout_text is never deleted');
end;

create trigger source_layout_is_not_updated before update on source_layout
begin
    select raise(abort, 'the ledger only grows: a row of source_layout is never changed');
end;

create trigger source_layout_is_not_deleted before delete on source_layout
begin
    select raise(abort, 'the ledger only grows: a row of source_layout is never deleted');
end;

create trigger asked_entry_is_not_updated before update on asked_entry
begin
    select raise(abort, 'the ledger only grows: a row of asked_entry is never changed');
end;

create trigger asked_entry_is_not_deleted before delete on asked_entry
begin
    select raise(abort, 'the ledger only grows: a row of asked_entry is never deleted');
end;

-- Last, so that a ledger with this number has everything above.
pragma user_version = 5;
