-- What people recorded. Nothing is changed or removed: an entry that was mended keeps its row and names the one that stands for it now, one that was withdrawn
-- keeps its row with the reason.

create table journal_entry (
    number integer primary key autoincrement,
    site text not null,
    kind text not null check (kind in ('done', 'reading', 'sighting', 'mowing')),
    on_day text not null,
    at_time text,
    treatment text,
    active text,
    no_seed_until text,
    what text,
    depth_cm real,
    value_c real,
    note text not null,
    recorded_at text not null,
    replaced_by integer references journal_entry (number),
    withdrawn_at text,
    withdrawn_because text,
    check ((kind = 'done') = (treatment is not null)),
    check ((kind = 'reading') = (value_c is not null)),
    check ((kind = 'sighting') = (what is not null)),
    check (replaced_by is null or withdrawn_at is null)
) strict;

create index journal_entry_of_site on journal_entry (site, on_day);
