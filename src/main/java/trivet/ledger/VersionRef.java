package trivet.ledger;

/** A version of a text that judged: a plan's or a rulebook's id, its number and the SHA-256 of its bytes. */
public record VersionRef(String id, int version, String sha256) {
}
