package rootcast.ledger;

import java.time.Instant;

/**
 * Plants that one entry puts into an account (or takes out, then negative).
 *
 * @param effectiveAt when the account changes: the entry's own instant, or that of a later entry whose effect it alters
 */
public record Posting(Account account, long plants, Instant effectiveAt) {}
