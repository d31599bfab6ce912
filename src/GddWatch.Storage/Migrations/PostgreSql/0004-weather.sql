-- What came in from feeds is kept: each value with the instant at which it was first seen, and, where the source changed it, until when it stood. A forecast is
-- kept as it was issued and never changed.

create table daily_value (
    site text collate "C" not null,
    feed text collate "C" not null,
    day text collate "C" not null,
    variable text collate "C" not null,
    value double precision not null,
    seen_at text collate "C" not null,
    replaced_at text collate "C",
    primary key (site, feed, day, variable, seen_at)
);

create table forecast_value (
    site text collate "C" not null,
    feed text collate "C" not null,
    issued_at text collate "C" not null,
    issued_on text collate "C" not null,
    day text collate "C" not null,
    variable text collate "C" not null,
    value double precision not null,
    primary key (site, feed, issued_at, day, variable)
);

create table feed_position (
    site text collate "C" not null,
    feed text collate "C" not null,
    seen_at text collate "C" not null,
    latitude double precision not null,
    longitude double precision not null,
    elevation_m double precision,
    primary key (site, feed, seen_at)
);
