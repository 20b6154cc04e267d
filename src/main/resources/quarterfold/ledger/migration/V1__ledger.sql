-- The ledger. Amounts are whole ten-thousandths of the currency's main unit, days are days since
-- 1970-01-01, a text or amount that was not stated is null. Rows are added and never changed.

pragma application_id = 0x51464C44; -- 'QFLD'

create table profile (
    id integer primary key,
    kind text not null,
    currency text not null,
    rate text not null,
    party text not null,
    party_country text not null,
    party_vat text not null,
    category text not null,
    goods_from text not null,
    goods_to text not null,
    customer text not null,
    customer_vat text not null,
    channel text not null,
    channel_collects text not null,
    settlement text not null,
    evidence text not null,
    business_use text not null,
    unique (kind, currency, rate, party, party_country, party_vat, category, goods_from, goods_to,
        customer, customer_vat, channel, channel_collects, settlement, evidence, business_use)
) strict;

-- Shared by neighbouring entries; not unique, since an index would cost more than it saves.
create table item (
    id integer primary key,
    product text not null,
    description text not null
) strict;

-- A source's entries are the unbroken run of numbers first_entry … first_entry + entries - 1, so an
-- entry needs no column for its source and no index.
create table source (
    id integer primary key,
    sha256 text not null unique,
    name text not null,
    layout text not null,
    first_entry integer not null,
    entries integer not null check (entries >= 0),
    rows_read integer not null,
    rows_entered integer not null check (rows_entered between 0 and rows_read),
    money_in integer not null,
    money_entered integer not null check (money_entered = money_in),
    first_day integer,
    last_day integer
) strict;

create table entry (
    number integer primary key,
    row integer not null,
    tax_point integer not null,
    profile integer not null references profile,
    item integer not null references item,
    order_number text,
    document text,
    net integer,
    vat integer,
    gross integer,
    paid integer,
    original text,
    notes text
) strict;

create table set_aside (
    id integer primary key,
    source integer not null references source deferrable initially deferred,
    row integer not null,
    reason text not null
) strict;

create table raised_query (
    id integer primary key,
    source integer not null references source deferrable initially deferred,
    code text not null,
    about text not null,
    question text not null
) strict;

-- A close's entries are the run of ids first_entry … first_entry + entries - 1 of closed_entry.
create table close (
    period text primary key, -- its last month, such as 2026-09
    start_day integer not null,
    end_day integer not null,
    due_day integer not null,
    direction text not null,
    settings text not null, -- book.yaml as the close took it
    last_entry integer not null, -- the highest number at the close: what is above it came later
    first_entry integer not null,
    entries integer not null check (entries >= 0)
) strict;

create table close_box (
    period text not null references close deferrable initially deferred,
    position integer not null,
    box text not null,
    exact integer not null,
    figure integer not null,
    other_rounding integer not null,
    primary key (period, position)
) strict;

create table close_query (
    period text not null references close deferrable initially deferred,
    position integer not null,
    id text not null,
    entry integer not null, -- 0 where it is about none
    place text not null,
    question text not null,
    money integer not null,
    primary key (period, position)
) strict;

create table law_text (
    sha256 text primary key,
    text text not null
) strict;

create table close_table (
    period text not null references close deferrable initially deferred,
    position integer not null,
    name text not null,
    sha256 text not null references law_text,
    primary key (period, position)
) strict;

create table ruling (
    id integer primary key,
    treatment text not null,
    rule text not null,
    rate text not null,
    unique (treatment, rule, rate)
) strict;

create table closed_entry (
    id integer primary key,
    number integer not null unique references entry, -- an entry is closed once
    ruling integer not null references ruling,
    net integer not null,
    vat integer not null,
    claim integer not null,
    boxes text not null -- such as 1:20.0000 6:100.0000
) strict;

create trigger profile_is_not_updated before update on profile
begin
    select raise(abort, 'the ledger only grows: a row of profile is never changed');
end;

create trigger profile_is_not_deleted before delete on profile
begin
    select raise(abort, 'the ledger only grows: a row of profile is never deleted');
end;

create trigger item_is_not_updated before update on item
begin
    select raise(abort, 'the ledger only grows: a row of item is never changed');
end;

create trigger item_is_not_deleted before delete on item
begin
    select raise(abort, 'the ledger only grows: a row of item is never deleted');
end;

create trigger source_is_not_updated before update on source
begin
    select raise(abort, 'the ledger only grows: a row of source is never changed');
end;

create trigger source_is_not_deleted before delete on source
begin
    select raise(abort, 'the ledger only grows: a row of source is never deleted');
end;

create trigger entry_is_not_updated before update on entry
begin
    select raise(abort, 'the ledger only grows: a row of entry is never changed');
end;

create trigger entry_is_not_deleted before delete on entry
begin
    select raise(abort, 'the ledger only grows: a row of entry is never deleted');
end;

create trigger set_aside_is_not_updated before update on set_aside
begin
    select raise(abort, 'the ledger only grows: a row of set_aside is never changed');
end;

create trigger set_aside_is_not_deleted before delete on set_aside
begin
    select raise(abort, 'the ledger only grows: a row of set_aside is never deleted');
end;

create trigger raised_query_is_not_updated before update on raised_query
begin
    select raise(abort, 'the ledger only grows: a row of raised_query is never changed');
end;

create trigger raised_query_is_not_deleted before delete on raised_query
begin
    select raise(abort, 'the ledger only grows: a row of raised_query is never deleted');
end;

create trigger close_is_not_updated before update on close
begin
    select raise(abort, 'the ledger only grows: a row of close is never changed');
end;

create trigger close_is_not_deleted before delete on close
begin
    select raise(abort, 'the ledger only grows: a row of close is never deleted');
end;

create trigger close_box_is_not_updated before update on close_box
begin
    select raise(abort, 'the ledger only grows: a row of close_box is never changed');
end;

create trigger close_box_is_not_deleted before delete on close_box
begin
    select raise(abort, 'the ledger only grows: a row of close_box is never deleted');
end;

create trigger close_query_is_not_updated before update on close_query
begin
    select raise(abort, 'the ledger only grows: a row of close_query is never changed');
end;

create trigger close_query_is_not_deleted before delete on close_query
begin
    select raise(abort, 'the ledger only grows: a row of close_query is never deleted');
end;

create trigger law_text_is_not_updated before update on law_text
begin
    select raise(abort, 'the ledger only grows: a row of law_text is never changed');
end;

create trigger law_text_is_not_deleted before delete on law_text
begin
    select raise(abort, 'the ledger only grows: a row of law_text is never deleted');
end;

create trigger close_table_is_not_updated before update on close_table
begin
    select raise(abort, 'the ledger only grows: a row of close_table is never changed');
end;

create trigger close_table_is_not_deleted before delete on close_table
begin
    select raise(abort, 'the ledger only grows: a row of close_table is never deleted');
end;

create trigger ruling_is_not_updated before update on ruling
begin
    select raise(abort, 'the ledger only grows: a row of ruling is never changed');
end;

create trigger ruling_is_not_deleted before delete on ruling
begin
    select raise(abort, 'the ledger only grows: a row of ruling is never deleted');
end;

create trigger closed_entry_is_not_updated before update on closed_entry
begin
    select raise(abort, 'the ledger only grows: a row of closed_entry is never changed');
end;

create trigger closed_entry_is_not_deleted before delete on closed_entry
begin
    select raise(abort, 'the ledger only grows: a row of closed_entry is never deleted');
end;

-- Last, so that a ledger with this number has everything above.
pragma user_version = 1;
