-- Since when a message has been tried, so that trying ends some day; and when it was withdrawn, because what it says was no longer so before it was delivered. A
-- withdrawn message has the state 'refused'.
alter table message add column first_tried_at text;

alter table message add column withdrawn_at text;

-- Addresses that refused mails for good, one after the other. From some number on nothing is sent there until somebody says so.
create table refusing_address (
    address text not null primary key,
    refusals integer not null,
    last_words text not null,
    last_at text not null,
    paused_at text,
    resumed_at text
) strict;
