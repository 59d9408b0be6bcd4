package org.headfall.validation;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideOutsideOfPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.GeneralCodingRules.ACCESS_STANDARD_STREAMS;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import org.jspecify.annotations.NullMarked;

/** The shape of the program, which no change may bend unseen. */
@AnalyzeClasses(packages = "org.headfall", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {

    private static final String GENERATED_TEMPLATES = "org.headfall..template..";

    @ArchTest
    static final ArchRule modulesDependOneWay = layeredArchitecture()
            .consideringOnlyDependenciesInAnyPackage("org.headfall..")
            .layer("solver")
            .definedBy("org.headfall.solver..")
            .layer("scenarios")
            .definedBy("org.headfall.scenarios..")
            .layer("cli")
            .definedBy("org.headfall.cli..")
            .layer("validation")
            .definedBy("org.headfall.validation..")
            .whereLayer("validation")
            .mayNotBeAccessedByAnyLayer()
            .whereLayer("cli")
            .mayOnlyBeAccessedByLayers("validation")
            .whereLayer("scenarios")
            .mayOnlyBeAccessedByLayers("cli", "validation");

    /** Every package of every module is a slice of its own. */
    @ArchTest
    static final ArchRule packagesFormNoCycle =
            slices().matching("org.headfall.(**)").should().beFreeOfCycles();

    @ArchTest
    static final ArchRule linearAlgebraKnowsNoAquifers = noClasses()
            .that()
            .resideInAPackage("org.headfall.solver.linear..")
            .should()
            .dependOnClassesThat(
                    resideInAPackage("org.headfall..").and(resideOutsideOfPackage("org.headfall.solver.linear..")));

    @ArchTest
    static final ArchRule theSolverTouchesNoFiles = noClasses()
            .that()
            .resideInAPackage("org.headfall.solver..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("java.io..", "java.nio.file..", "org.snakeyaml..", "ucar..");

    @ArchTest
    static final ArchRule onlyCommandsPrint =
            noClasses().that().resideOutsideOfPackage("org.headfall.cli..").should(ACCESS_STANDARD_STREAMS);

    @ArchTest
    static final ArchRule onlyCommandsEndTheProcess = noClasses()
            .that()
            .resideOutsideOfPackages("org.headfall.cli..", "org.headfall.validation.benchmark..")
            .should()
            .callMethod(System.class, "exit", int.class);

    @ArchTest
    static final ArchRule everyPackageExplainsItself =
            classes().that().resideOutsideOfPackage(GENERATED_TEMPLATES).should(beInAPackageWithAPackageInfo());

    /** A package-info with an annotation is kept in the class file, so its presence shows as the annotation. */
    private static ArchCondition<JavaClass> beInAPackageWithAPackageInfo() {
        return new ArchCondition<>("be in a package with a package-info.java that is @NullMarked") {
            @Override
            public void check(JavaClass type, ConditionEvents events) {
                boolean explained = type.getPackage().isAnnotatedWith(NullMarked.class);
                events.add(new SimpleConditionEvent(type, explained, type.getPackageName() + " of " + type.getName()));
            }
        };
    }
}
