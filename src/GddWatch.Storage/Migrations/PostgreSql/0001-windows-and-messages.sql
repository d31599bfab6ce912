-- Every text is collated "C", so that it sorts by its bytes, as in SQLite, whatever the language of the server.
-- Days are ISO dates, instants are UTC as yyyy-MM-ddTHH:mm:ss.fffffffZ: of one width, so that they compare as text.
-- Addresses are kept in lower case where they are compared, and as configured inside the message.

create table judged_site (
    site text collate "C" not null primary key,
    judged_on text collate "C" not null
);

create table kept_window (
    site text collate "C" not null,
    treatment text collate "C" not null,
    season integer not null,
    state text collate "C" not null
        check (state in ('waiting', 'nearing', 'open', 'closing', 'closed', 'held', 'done', 'unknown')),
    since text collate "C" not null,
    reason text collate "C" not null,
    opened text collate "C",
    past_best text collate "C",
    closed_on text collate "C",
    judged_on text collate "C" not null,
    weather_through text collate "C",
    configuration text collate "C" not null,
    configuration_note text collate "C",
    primary key (site, treatment, season)
);

-- The queue of messages, and afterwards what became of them.
create table message (
    queue_order bigint generated always as identity primary key,
    message_id text collate "C" not null unique,
    address text collate "C" not null,
    day text collate "C" not null,
    body text collate "C" not null,
    state text collate "C" not null check (state in ('queued', 'delivered', 'refused')),
    queued_at text collate "C" not null,
    not_before text collate "C" not null,
    claim_owner text collate "C",
    claimed_until text collate "C",
    attempts integer not null default 0,
    last_outcome text collate "C"
        check (last_outcome in ('delivered', 'refused-for-now', 'refused-for-good', 'unknown')),
    last_words text collate "C",
    settled_at text collate "C",
    check ((claim_owner is null) = (claimed_until is null)),
    check (state = 'queued' or claim_owner is null)
);

create index message_due on message (state, not_before);
create index message_claimed on message (claim_owner);

-- One change of one window is told to one person once: the primary key holds it, whatever the program plans.
create table told (
    site text collate "C" not null,
    treatment text collate "C" not null,
    season integer not null,
    kind text collate "C" not null,
    address text collate "C" not null,
    day text collate "C" not null,
    message_id text collate "C" not null references message (message_id),
    primary key (site, treatment, season, kind, address)
);

create index told_message on told (message_id);

create table region_value (
    name text collate "C" not null primary key,
    value text collate "C" not null
);
