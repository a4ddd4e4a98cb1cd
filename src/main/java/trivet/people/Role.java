package trivet.people;

/** What a person may do at the site. */
public enum Role {
    /** Bakes and records. */
    BAKER,
    /** Answers for the plan, the rulebook and the people. */
    OWNER,
    /** Comes from outside and only accepts, verifies and releases as the second person. */
    OUTSIDER
}
