namespace GddWatch.Storage.Sql;

/// <summary>
/// The statements over <c>message</c>. An outcome is recorded only by the claim under which it came about, so that a worker whose claim ran out cannot
/// free a message that another has in hand; only "delivered" is taken from anyone, since it is true whoever says it.
/// </summary>
internal static class MessageSql
{
    public const string Queue = """
        insert into message (message_id, address, day, body, state, queued_at, not_before)
        values (@messageId, @address, @day, @body, 'queued', @queuedAt, @notBefore)
        on conflict (message_id) do nothing
        """;

    // One statement claims, so that no other claimer comes between choosing and marking. For a database with one writer at a time.
    public const string Claim = """
        update message
        set claim_owner = @owner, claimed_until = @until, attempts = attempts + 1, first_tried_at = coalesce(first_tried_at, @now)
        where message_id in (
            select message_id from message
            where state = 'queued' and not_before <= @now and (claimed_until is null or claimed_until <= @now)
            order by queue_order
            limit @most)
        """;

    // The same where several claim at once: each passes over what another is claiming or recording just now. The choice is made once and before
    // the marking: as a part of its condition it could be made anew for each row, and more would be claimed than asked for.
    public const string ClaimSkippingLocked = """
        with due as materialized (
            select message_id from message
            where state = 'queued' and not_before <= @now and (claimed_until is null or claimed_until <= @now)
            order by queue_order
            limit @most
            for update skip locked)
        update message
        set claim_owner = @owner, claimed_until = @until, attempts = attempts + 1, first_tried_at = coalesce(first_tried_at, @now)
        from due
        where message.message_id = due.message_id
        """;

    public const string LoadClaimed = """
        select message_id as MessageId, body as Body, queued_at as QueuedAt, attempts as Attempts, first_tried_at as FirstTriedAt
        from message
        where claim_owner = @owner
        order by queue_order
        """;

    public const string Release = """
        update message
        set claim_owner = null, claimed_until = null, attempts = attempts - 1, first_tried_at = case when attempts > 1 then first_tried_at end
        where message_id = @messageId and claim_owner = @owner
        """;

    public const string Postpone = """
        update message
        set claim_owner = null, claimed_until = null, attempts = attempts - 1, first_tried_at = case when attempts > 1 then first_tried_at end,
            not_before = @notBefore
        where message_id = @messageId and claim_owner = @owner
        """;

    // A wait that no true clock can have set was set by one that was ahead and was put right since.
    public const string EndImpossibleWaits = """
        update message
        set not_before = case when not_before > @farthest then @now else not_before end,
            claim_owner = case when claimed_until > @farthest then null else claim_owner end,
            claimed_until = case when claimed_until > @farthest then null else claimed_until end
        where state = 'queued' and (not_before > @farthest or claimed_until > @farthest)
        """;

    public const string Delivered = """
        update message
        set state = 'delivered', last_outcome = 'delivered', last_words = @words, settled_at = @at, claim_owner = null, claimed_until = null
        where message_id = @messageId and state <> 'delivered'
        """;

    public const string TryAgain = """
        update message
        set not_before = @nextAttempt, last_outcome = @outcome, last_words = @words, claim_owner = null, claimed_until = null
        where message_id = @messageId and claim_owner = @owner
        """;

    public const string RefusedForGood = """
        update message
        set state = 'refused', last_outcome = 'refused-for-good', last_words = @words, settled_at = @at,
            claim_owner = null, claimed_until = null
        where message_id = @messageId and claim_owner = @owner
        """;

    // Those in somebody's hand too: the address is known to take nothing.
    public const string RefuseAllTo = """
        update message
        set state = 'refused', last_outcome = 'refused-for-good', last_words = @words, settled_at = @at, claim_owner = null, claimed_until = null
        where state = 'queued' and lower(address) = @address
        """;

    public const string Withdraw = """
        update message
        set state = 'refused', last_words = @words, settled_at = @at, withdrawn_at = @at, claim_owner = null, claimed_until = null
        where message_id = @messageId and state <> 'delivered' and (claimed_until is null or claimed_until <= @at)
        """;

    // What has not reached anybody and is in nobody's hand; with it what was refused by an address that is to be tried again.
    private const string IsHeldUp = """
        m.withdrawn_at is null
        and ((m.state = 'queued' and (m.claimed_until is null or m.claimed_until <= @now))
             or (m.state = 'refused' and exists (select 1 from refusing_address r where r.address = lower(m.address) and r.resumed_at is not null)))
        """;

    public const string LoadHeldUpFacts = $"""
        select t.site as Site, t.treatment as Treatment, t.season as Season, t.kind as Kind, t.revision as Revision, t.address as Address, t.day as Day,
               t.fact as FactDay, t.message_id as MessageId, m.state as State
        from message m join told t on t.message_id = m.message_id
        where {IsHeldUp}
        order by m.queue_order, t.site, t.treatment, t.season, t.kind
        """;

    public const string LoadHeldUpOthers = $"""
        select m.message_id as MessageId, m.address as Address, m.body as Body, m.state as State
        from message m
        where {IsHeldUp} and not exists (select 1 from told t where t.message_id = m.message_id)
        order by m.queue_order
        """;

    public const string LoadBody = """
        select body from message where message_id = @messageId
        """;

    public const string Count = """
        select count(case when state = 'queued' then 1 end) as Queued,
               count(case when state = 'queued' and attempts = 0 and not_before > @now then 1 end) as ForLater,
               count(case when state = 'delivered' then 1 end) as Delivered,
               count(case when state = 'refused' and withdrawn_at is null then 1 end) as Refused,
               min(case when state = 'queued' then queued_at end) as OldestWaiting
        from message
        """;

    public const string LoadUndelivered = """
        select message_id as MessageId, address as Address, day as Day, state as State, queued_at as QueuedAt, not_before as NotBefore,
               attempts as Attempts, last_outcome as LastOutcome, last_words as LastWords
        from message
        where state <> 'delivered' and withdrawn_at is null
        order by queue_order
        """;
}
