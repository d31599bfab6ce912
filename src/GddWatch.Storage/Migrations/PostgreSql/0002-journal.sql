-- What people recorded. Nothing is changed or removed: an entry that was mended keeps its row and names the one that stands for it now, one that was withdrawn
-- keeps its row with the reason.

create table journal_entry (
    number bigint not null primary key,
    site text collate "C" not null,
    kind text collate "C" not null check (kind in ('done', 'reading', 'sighting', 'mowing')),
    on_day text collate "C" not null,
    at_time text collate "C",
    treatment text collate "C",
    active text collate "C",
    no_seed_until text collate "C",
    what text collate "C",
    depth_cm double precision,
    value_c double precision,
    note text collate "C" not null,
    recorded_at text collate "C" not null,
    replaced_by bigint references journal_entry (number),
    withdrawn_at text collate "C",
    withdrawn_because text collate "C",
    check ((kind = 'done') = (treatment is not null)),
    check ((kind = 'reading') = (value_c is not null)),
    check ((kind = 'sighting') = (what is not null)),
    check (replaced_by is null or withdrawn_at is null)
);

create index journal_entry_of_site on journal_entry (site, on_day);
