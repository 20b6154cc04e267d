-- Facts that few lines state; what people decided; and closes that freeze more than one occasion
-- of an entry, adjustments, and the decisions they knew.

alter table entry add column particulars text; -- such as held=2026-04-08 use=both

-- Few entries have particulars, so this index costs an import nothing.
create index entry_with_particulars on entry (number) where particulars is not null;

create table decision (
    id integer primary key,
    target text not null, -- entry, party, product or query
    about text not null, -- the entry's number, the party's name, the product's code, the query's id
    action text not null,
    value text not null,
    why text not null check (why <> ''),
    who text not null check (who <> ''),
    day integer not null
) strict;

alter table close add column last_decision integer not null default 0;

alter table close_query add column holds_close integer not null default 0;

alter table close_query add column answer text not null default '';

create table close_adjustment (
    period text not null references close deferrable initially deferred,
    position integer not null,
    treatment text not null,
    about text not null,
    why text not null,
    authority text not null,
    net integer not null,
    vat integer not null,
    claim integer not null,
    boxes text not null,
    primary key (period, position)
) strict;

-- What a return took up of earlier periods: its worksheet of corrections.
create table close_correction (
    id integer primary key, -- in the order of the closes
    period text not null references close deferrable initially deferred,
    position integer not null,
    number integer not null references entry,
    day integer not null, -- of the occasion it is about, with its cause
    cause text not null,
    of_period text not null, -- the period the occasion belongs to
    taken_up text not null,
    declared text not null, -- boxes, such as 1:20.0000
    right text not null,
    boxes text not null, -- what the return took up
    why text not null,
    unique (period, position)
) strict;

create index close_correction_of_entry on close_correction (number);

-- An entry may have several occasions, so it may be frozen more than once: on different days or
-- for different causes.
create table ruling_new (
    id integer primary key,
    treatment text not null,
    rule text not null,
    rate text not null,
    taken_up text not null,
    unique (treatment, rule, rate, taken_up)
) strict;

insert into ruling_new (id, treatment, rule, rate, taken_up)
    select id, treatment, rule, rate, 'in-its-period' from ruling;

create table closed_entry_new (
    id integer primary key,
    number integer not null references entry,
    day integer not null, -- of the occasion
    cause text not null,
    ruling integer not null references ruling,
    net integer not null,
    vat integer not null,
    claim integer not null,
    boxes text not null, -- such as 1:20.0000 6:100.0000
    unique (number, day, cause) -- an occasion is in one return
) strict;

insert into closed_entry_new (id, number, day, cause, ruling, net, vat, claim, boxes)
    select c.id, c.number, e.tax_point, 'supply', c.ruling, c.net, c.vat, c.claim, c.boxes
    from closed_entry c join entry e on e.number = c.number;

drop table closed_entry;

drop table ruling;

alter table ruling_new rename to ruling;

alter table closed_entry_new rename to closed_entry;

create trigger decision_is_not_updated before update on decision
begin
    select raise(abort, 'the ledger only grows: a row of decision is never changed');
end;

create trigger decision_is_not_deleted before delete on decision
begin
    select raise(abort, 'the ledger only grows: a row of decision is never deleted');
end;

create trigger close_adjustment_is_not_updated before update on close_adjustment
begin
    select raise(abort, 'the ledger only grows: a row of close_adjustment is never changed');
end;

create trigger close_adjustment_is_not_deleted before delete on close_adjustment
begin
    select raise(abort, 'the ledger only grows: a row of close_adjustment is never deleted');
end;

create trigger close_correction_is_not_updated before update on close_correction
begin
    select raise(abort, 'the ledger only grows: a row of close_correction is never changed');
end;

create trigger close_correction_is_not_deleted before delete on close_correction
begin
    select raise(abort, 'the ledger only grows: a row of close_correction is never deleted');
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
pragma user_version = 2;
