-- What came in from feeds is kept: each value with the instant at which it was first seen, and, where the source changed it, until when it stood. A forecast is
-- kept as it was issued and never changed.

create table daily_value (
    site text not null,
    feed text not null,
    day text not null,
    variable text not null,
    value real not null,
    seen_at text not null,
    replaced_at text,
    primary key (site, feed, day, variable, seen_at)
) strict;

create table forecast_value (
    site text not null,
    feed text not null,
    issued_at text not null,
    issued_on text not null,
    day text not null,
    variable text not null,
    value real not null,
    primary key (site, feed, issued_at, day, variable)
) strict;

create table feed_position (
    site text not null,
    feed text not null,
    seen_at text not null,
    latitude real not null,
    longitude real not null,
    elevation_m real,
    primary key (site, feed, seen_at)
) strict;
