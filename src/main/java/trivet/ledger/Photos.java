package trivet.ledger;

import java.util.Optional;

/** Photos, found by the SHA-256 of their bytes. */
public interface Photos {

    /** A photo as it was sent. */
    record Photo(String type, byte[] bytes) {
    }

    /** Keeps a photo; on disk when this returns. The same bytes twice are kept once. */
    void keep(String sha256, String device, Photo photo);

    /** The photo of that hash. */
    Optional<Photo> find(String sha256);
}
