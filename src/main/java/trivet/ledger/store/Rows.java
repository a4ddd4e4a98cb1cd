package trivet.ledger.store;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import javax.sql.DataSource;

/** Reads rows on a connection of its own. */
@ApplicationScoped
public class Rows {

    @Inject
    DataSource source;

    /** Reads one row. */
    public interface Row<T> {
        T of(ResultSet row) throws SQLException;
    }

    /** All rows of a query with its values in place. */
    public <T> List<T> read(String sql, Row<T> one, Object... values) {
        try (Connection connection = source.getConnection(); PreparedStatement select = connection.prepareStatement(sql)) {
            for (int i = 0; i < values.length; i++) {
                select.setObject(i + 1, values[i]);
            }
            List<T> rows = new ArrayList<>();
            try (ResultSet row = select.executeQuery()) {
                while (row.next()) {
                    rows.add(one.of(row));
                }
            }
            return rows;
        } catch (SQLException failed) {
            throw new IllegalStateException("The database could not be read.", failed);
        }
    }
}
