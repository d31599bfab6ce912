-- What was told can turn out otherwise: each telling keeps the day that it named and the configuration that judged it, and a correction is a further
-- revision beside the one before. Of what was told before this change neither is known, so the weather does not correct it.

create table told_with_facts (
    site text collate "C" not null,
    treatment text collate "C" not null,
    season integer not null,
    kind text collate "C" not null,
    revision integer not null,
    address text collate "C" not null,
    day text collate "C" not null,
    fact text collate "C",
    configuration text collate "C" not null,
    message_id text collate "C" not null references message (message_id),
    primary key (site, treatment, season, kind, address, revision)
);

insert into told_with_facts (site, treatment, season, kind, revision, address, day, fact, configuration, message_id)
select site, treatment, season, kind, 0, address, day, day, '', message_id
from told;

drop table told;

alter table told_with_facts rename to told;

create index told_message on told (message_id);
