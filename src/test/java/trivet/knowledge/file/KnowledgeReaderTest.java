package trivet.knowledge.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import trivet.knowledge.Knowledge;
import trivet.knowledge.Region;
import trivet.knowledge.Sourced;

/** The shipped knowledge base, and what its reader says of a broken one. */
class KnowledgeReaderTest {

    private static final Knowledge SHIPPED = KnowledgeReader.shipped();

    @Test
    void it_is_large_enough_and_every_row_has_a_source_and_a_standing() {
        assertTrue(SHIPPED.ingredients().size() >= 40);
        assertTrue(SHIPPED.steps().size() >= 30);
        Stream.of(SHIPPED.ingredients(), SHIPPED.steps(), SHIPPED.hazards(), SHIPPED.equipment(), SHIPPED.regions(), SHIPPED.programmes()).flatMap(List::stream).map(Sourced.class::cast).forEach(row ->
                assertTrue(!row.source().isBlank() && !row.standing().isBlank() && !row.read().isBlank() && !row.title().isBlank(), row.id()));
        SHIPPED.hazards().forEach(hazard -> assertTrue(!hazard.acceptable().isBlank() && !hazard.acceptableSource().isBlank() && hazard.severity().matches("[1-4]"), hazard.id()));
    }

    private static Set<String> groups(String region) {
        return SHIPPED.region(region).orElseThrow().groups().stream().map(Region.Group::id).collect(Collectors.toCollection(TreeSet::new));
    }

    @Test
    void the_allergen_lists_are_those_of_the_regulations() {
        // Reg. (EU) 1169/2011 Annex II, 14 substances or products, from memory; Great Britain has kept the list
        Set<String> fourteen = new TreeSet<>(Set.of("gluten", "crustaceans", "eggs", "fish", "peanuts", "soybeans", "milk", "nuts", "celery", "mustard", "sesame", "sulphites", "lupin", "molluscs"));
        assertEquals(14, fourteen.size());
        assertEquals(fourteen, groups("eu"));
        assertEquals(fourteen, groups("uk"));
        assertEquals(Set.of("almond", "hazelnut", "walnut", "cashew", "pecan", "brazil-nut", "pistachio", "macadamia"),
                Set.copyOf(SHIPPED.region("eu").orElseThrow().groups().stream().filter(g -> g.id().equals("nuts")).findFirst().orElseThrow().of()));
        // FALCPA 2004 and FASTER Act 2021, from memory: nine
        assertEquals(new TreeSet<>(Set.of("milk", "egg", "fish", "crustacean-shellfish", "tree-nuts", "peanut", "wheat", "soybean", "sesame")), groups("us"));
        // Rye and barley are no allergen of the nine, and pine nuts none of the fourteen
        assertTrue(SHIPPED.region("us").orElseThrow().groups(Set.of("rye", "barley", "oats")).isEmpty());
        assertTrue(SHIPPED.region("eu").orElseThrow().groups(Set.of("pine-nut")).isEmpty());
        // Food Standards Code Schedule 9, and Food and Drug Regulations B.01.010.1, from memory
        assertTrue(groups("australia").containsAll(Set.of("gluten", "wheat", "crustacean", "mollusc", "egg", "fish", "lupin", "milk", "peanut", "sesame", "soy", "sulphites")));
        assertTrue(groups("canada").containsAll(Set.of("mustard", "shellfish", "wheat-triticale", "gluten", "sulphites")) && !groups("canada").contains("celery"));
    }

    @Test
    void a_broken_file_is_reported_with_its_line() {
        Map<String, String> texts = new HashMap<>(KnowledgeReader.texts());
        texts.put("equipment", "format: equipment/1\nequipment:\n  - { id: mixer, title: \"Mixer\", hazards: [no-such], source: \"x\", standing: rumour, read: true }\n  - { id: mixer, colour: red }\n");
        String said = KnowledgeReader.read(texts::get).problems().toString();
        assertTrue(said.contains("rumour") && said.contains("no-such") && said.contains("colour") && said.contains("twice") && said.contains("line 4"), said);
    }
}
