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
        set claim_owner = @owner, claimed_until = @until, attempts = attempts + 1
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
        set claim_owner = @owner, claimed_until = @until, attempts = attempts + 1
        from due
        where message.message_id = due.message_id
        """;

    public const string LoadClaimed = """
        select message_id as MessageId, body as Body, queued_at as QueuedAt, attempts as Attempts
        from message
        where claim_owner = @owner
        order by queue_order
        """;

    public const string Release = """
        update message
        set claim_owner = null, claimed_until = null, attempts = attempts - 1
        where message_id = @messageId and claim_owner = @owner
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

    public const string Count = """
        select count(case when state = 'queued' then 1 end) as Queued,
               count(case when state = 'delivered' then 1 end) as Delivered,
               count(case when state = 'refused' then 1 end) as Refused,
               min(case when state = 'queued' then queued_at end) as OldestWaiting
        from message
        """;

    public const string LoadUndelivered = """
        select message_id as MessageId, address as Address, day as Day, state as State, queued_at as QueuedAt, not_before as NotBefore,
               attempts as Attempts, last_outcome as LastOutcome, last_words as LastWords
        from message
        where state <> 'delivered'
        order by queue_order
        """;
}
