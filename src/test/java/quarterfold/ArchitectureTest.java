package quarterfold;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.AccessTarget;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaCodeUnit;
import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.time.Clock;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Money and the law's dated tables know nothing else; the ledger keeps entries; intake fills it;
 * treatment judges them; the period closes them; the outlook looks ahead; the papers show what was
 * found; the CLI joins them.
 */
@AnalyzeClasses(packages = "quarterfold", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {

    private static final String ROOT = "quarterfold.";
    private static final Set<String> ROOMS =
            Set.of(
                    "money",
                    "law",
                    "ledger",
                    "intake",
                    "treatment",
                    "period",
                    "outlook",
                    "papers",
                    "cli");

    /** The rooms whose figures are sterling. */
    private static final Set<String> EXACT =
            Set.of("money", "law", "ledger", "treatment", "period", "outlook");

    @ArchTest
    static final ArchRule ARROWS_RUN_DOWNWARD =
            layeredArchitecture()
                    .consideringOnlyDependenciesInLayers()
                    .layer("money")
                    .definedBy("quarterfold.money..")
                    .layer("law")
                    .definedBy("quarterfold.law..")
                    .layer("ledger")
                    .definedBy("quarterfold.ledger..")
                    .layer("intake")
                    .definedBy("quarterfold.intake..")
                    .layer("treatment")
                    .definedBy("quarterfold.treatment..")
                    .layer("period")
                    .definedBy("quarterfold.period..")
                    .layer("outlook")
                    .definedBy("quarterfold.outlook..")
                    .layer("papers")
                    .definedBy("quarterfold.papers..")
                    .layer("cli")
                    .definedBy("quarterfold.cli..")
                    .whereLayer("money")
                    .mayNotAccessAnyLayer()
                    .whereLayer("law")
                    .mayOnlyAccessLayers("money")
                    .whereLayer("ledger")
                    .mayOnlyAccessLayers("money")
                    .whereLayer("intake")
                    .mayOnlyAccessLayers("ledger", "money")
                    .whereLayer("treatment")
                    .mayOnlyAccessLayers("ledger", "law", "money")
                    .whereLayer("period")
                    .mayOnlyAccessLayers("treatment", "ledger", "law", "money")
                    .whereLayer("outlook")
                    .mayOnlyAccessLayers("period", "treatment", "ledger", "law", "money")
                    .whereLayer("papers")
                    .mayOnlyAccessLayers("outlook", "period", "treatment", "ledger", "law", "money")
                    .whereLayer("cli")
                    .mayNotBeAccessedByAnyLayer();

    @ArchTest
    static final ArchRule NO_CYCLES =
            slices().matching("quarterfold.(*)..").should().beFreeOfCycles();

    @ArchTest
    static final ArchRule NOTHING_IS_SENT =
            noClasses()
                    .should()
                    .dependOnClassesThat()
                    .resideInAnyPackage("java.net..", "javax.net..");

    /** The rules above say nothing of a class they did not see. */
    @ArchTest
    static void everyRoomWasSeenAndNothingIsOutside(JavaClasses classes) {
        Set<String> seen =
                classes.stream()
                        .filter(c -> !c.getSimpleName().equals("package-info"))
                        .map(ArchitectureTest::room)
                        .collect(Collectors.toSet());
        assertThat(seen).isEqualTo(ROOMS);
    }

    @ArchTest
    static void noFloatingPointNearMoney(JavaClasses classes) {
        List<JavaClass> exact = classes.stream().filter(c -> EXACT.contains(room(c))).toList();
        assertThat(exact).hasSizeGreaterThan(50);
        Stream<String> fields =
                exact.stream()
                        .flatMap(c -> c.getFields().stream())
                        .filter(f -> isFloating(f.getRawType()))
                        .map(JavaField::getFullName);
        Stream<String> units =
                exact.stream()
                        .flatMap(c -> c.getCodeUnits().stream())
                        .filter(
                                u ->
                                        isFloating(u.getRawReturnType())
                                                || u.getRawParameterTypes().stream()
                                                        .anyMatch(ArchitectureTest::isFloating))
                        .map(JavaCodeUnit::getFullName);
        assertThat(Stream.concat(fields, units)).isEmpty();
    }

    /** The same book gives the same figures on any day. */
    @ArchTest
    static void onlyTheCommandLineKnowsTheDay(JavaClasses classes) {
        assertThat(accesses(classes, ArchitectureTest::tellsTheTime)).isEmpty();
    }

    private static boolean tellsTheTime(AccessTarget target) {
        if (target.getOwner().isEquivalentTo(System.class)) {
            return Set.of("currentTimeMillis", "nanoTime").contains(target.getName());
        }
        return target.getOwner().isEquivalentTo(Clock.class)
                || (target.getOwner().getPackageName().equals("java.time")
                        && target.getName().equals("now"));
    }

    @ArchTest
    static void onlyTheCommandLinePrints(JavaClasses classes) {
        assertThat(
                        accesses(
                                classes,
                                target ->
                                        target.getOwner().isEquivalentTo(System.class)
                                                && Set.of("out", "err", "in", "console")
                                                        .contains(target.getName())))
                .isEmpty();
    }

    private static List<String> accesses(JavaClasses classes, Predicate<AccessTarget> forbidden) {
        List<JavaAccess<?>> all =
                classes.stream()
                        .filter(c -> !room(c).equals("cli"))
                        .<JavaAccess<?>>flatMap(c -> c.getAccessesFromSelf().stream())
                        .toList();
        assertThat(all).hasSizeGreaterThan(1000);
        return all.stream()
                .filter(a -> forbidden.test(a.getTarget()))
                .map(JavaAccess::getDescription)
                .toList();
    }

    private static boolean isFloating(JavaClass type) {
        return Stream.of(double.class, float.class, Double.class, Float.class)
                .anyMatch(type::isEquivalentTo);
    }

    private static String room(JavaClass found) {
        String name = found.getPackageName();
        return name.startsWith(ROOT) ? name.substring(ROOT.length()) : name;
    }
}
