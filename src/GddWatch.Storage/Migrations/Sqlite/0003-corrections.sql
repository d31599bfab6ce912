-- What was told can turn out otherwise: each telling keeps the day that it named and the configuration that judged it, and a correction is a further
-- revision beside the one before. Of what was told before this change neither is known, so the weather does not correct it.

create table told_with_facts (
    site text not null,
    treatment text not null,
    season integer not null,
    kind text not null,
    revision integer not null,
    address text not null,
    day text not null,
    fact text,
    configuration text not null,
    message_id text not null references message (message_id),
    primary key (site, treatment, season, kind, address, revision)
) strict;

insert into told_with_facts (site, treatment, season, kind, revision, address, day, fact, configuration, message_id)
select site, treatment, season, kind, 0, address, day, day, '', message_id
from told;

drop table told;

alter table told_with_facts rename to told;

create index told_message on told (message_id);
