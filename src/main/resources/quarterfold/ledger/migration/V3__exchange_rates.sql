-- Exchange rates as their publishers have them, and what a close used of them.

create table exchange_rate (
    id integer primary key, -- 1, 2, 3 … in the order they came
    source integer not null references source deferrable initially deferred,
    row integer not null,
    publisher text not null,
    currency text not null,
    first_day integer not null,
    last_day integer not null check (last_day >= first_day),
    units text not null -- of the currency for one of the publisher's base, such as 1.1719
) strict;

create index exchange_rate_by_day on exchange_rate (publisher, currency, first_day);

alter table close add column last_rate integer not null default 0; -- what is above it came later

alter table closed_entry add column exchange text; -- sterling money and ids of rates: 1996.7574 12

create trigger exchange_rate_is_not_updated before update on exchange_rate
begin
    select raise(abort, 'the ledger only grows: a row of exchange_rate is never changed');
end;

create trigger exchange_rate_is_not_deleted before delete on exchange_rate
begin
    select raise(abort, 'the ledger only grows: a row of exchange_rate is never deleted');
end;

-- Last, so that a ledger with this number has everything above.
pragma user_version = 3;
