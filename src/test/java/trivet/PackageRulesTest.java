package trivet;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Holds the ladder of packages: features look only down, roots stay free of frameworks, and nobody asks the wall clock. */
class PackageRulesTest {

    private static final List<String> LADDER = List.of("words", "measure", "limit", "cooling", "lethality", "forecast", "growth", "chart", "instrument", "excursion", "sign", "hazard", "calc", "ledger", "people", "device", "site", "lan", "form", "flow", "knowledge", "study", "plan", "batch",
            "check", "deviation", "outlook", "alarm", "week", "report", "tablet", "demo", "shell");
    private static final JavaClasses CLASSES = new ClassFileImporter().withImportOption(new ImportOption.DoNotIncludeTests()).importPackages("trivet");

    @Test
    void features_look_only_down_the_ladder() {
        for (int i = 0; i < LADDER.size(); i++) {
            String[] above = LADDER.subList(i + 1, LADDER.size()).stream().map(name -> "trivet." + name + "..").toArray(String[]::new);
            if (above.length > 0) {
                noClasses().that().resideInAPackage("trivet." + LADDER.get(i) + "..").should().dependOnClassesThat().resideInAnyPackage(above).check(CLASSES);
            }
        }
    }

    @Test
    void every_package_stands_on_the_ladder() {
        String[] known = LADDER.stream().map(name -> "trivet." + name + "..").toArray(String[]::new);
        classes().should().resideInAnyPackage(known).check(CLASSES);
    }

    @Test
    void roots_know_java_and_beans_and_no_other_framework() {
        for (String feature : LADDER.subList(0, LADDER.indexOf("demo"))) {
            classes().that().resideInAPackage("trivet." + feature).should().onlyDependOnClassesThat()
                    .resideInAnyPackage("java..", "javax.crypto..", "trivet..", "jakarta.inject..", "jakarta.enterprise.context..", "org.hipparchus.distribution..").allowEmptyShould(true).check(CLASSES);
        }
    }

    @Test
    void pages_never_reach_into_a_store() {
        noClasses().that().resideInAPackage("..web..").should().dependOnClassesThat().resideInAnyPackage("..store..").check(CLASSES);
    }

    @Test
    void there_is_no_cycle_of_features() {
        slices().matching("trivet.(*)..").should().beFreeOfCycles().check(CLASSES);
    }

    @Test
    void nobody_asks_the_wall_clock() {
        noClasses().should().callMethod(java.time.Instant.class, "now").orShould().callMethod(java.time.LocalDate.class, "now")
                .orShould().callMethod(System.class, "currentTimeMillis").check(CLASSES);
    }
}
