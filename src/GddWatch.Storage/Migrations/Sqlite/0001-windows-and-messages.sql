-- Days are ISO dates, instants are UTC as yyyy-MM-ddTHH:mm:ss.fffffffZ: of one width, so that they compare as text.
-- Addresses are kept in lower case where they are compared, and as configured inside the message.

create table judged_site (
    site text not null primary key,
    judged_on text not null
) strict;

create table kept_window (
    site text not null,
    treatment text not null,
    season integer not null,
    state text not null
        check (state in ('waiting', 'nearing', 'open', 'closing', 'closed', 'held', 'done', 'unknown')),
    since text not null,
    reason text not null,
    opened text,
    past_best text,
    closed_on text,
    judged_on text not null,
    weather_through text,
    configuration text not null,
    configuration_note text,
    primary key (site, treatment, season)
) strict;

-- The queue of messages, and afterwards what became of them.
create table message (
    queue_order integer primary key autoincrement,
    message_id text not null unique,
    address text not null,
    day text not null,
    body text not null,
    state text not null check (state in ('queued', 'delivered', 'refused')),
    queued_at text not null,
    not_before text not null,
    claim_owner text,
    claimed_until text,
    attempts integer not null default 0,
    last_outcome text
        check (last_outcome in ('delivered', 'refused-for-now', 'refused-for-good', 'unknown')),
    last_words text,
    settled_at text,
    check ((claim_owner is null) = (claimed_until is null)),
    check (state = 'queued' or claim_owner is null)
) strict;

create index message_due on message (state, not_before);
create index message_claimed on message (claim_owner);

-- One change of one window is told to one person once: the primary key holds it, whatever the program plans.
create table told (
    site text not null,
    treatment text not null,
    season integer not null,
    kind text not null,
    address text not null,
    day text not null,
    message_id text not null references message (message_id),
    primary key (site, treatment, season, kind, address)
) strict;

create index told_message on told (message_id);

create table region_value (
    name text not null primary key,
    value text not null
) strict;
