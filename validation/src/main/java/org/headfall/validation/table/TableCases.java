package org.headfall.validation.table;

import static org.headfall.validation.table.ReferenceTable.number;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import java.util.stream.Stream;
import org.headfall.solver.analytic.function.ErrorIntegral;
import org.headfall.solver.analytic.function.FreeFlowFunction;
import org.headfall.solver.analytic.function.LargeDiameterWellFunction;
import org.headfall.solver.analytic.function.LeakyWellFunction;
import org.headfall.solver.analytic.function.ModifiedBessel;
import org.headfall.solver.analytic.function.StoringBedWellFunction;
import org.headfall.solver.analytic.function.WellFunction;
import org.headfall.solver.analytic.side.StreamDepletion;
import org.headfall.solver.bore.Water;
import org.headfall.validation.check.Comparison;
import org.headfall.validation.check.Part;
import org.headfall.validation.check.Source;
import org.headfall.validation.check.Standing;
import org.headfall.validation.check.Tolerance;
import org.headfall.validation.check.ValidationCase;

/** The cases of closed forms against tables. */
public final class TableCases {

    private static final String OPEN =
            "Nothing about the grid: only that the function the simulator is measured by is itself right.";

    private static final TableCheck THEIS = new TableCheck(
            "theis_W.csv", 289, row -> "u=" + row.getField("u"), row -> WellFunction.of(number(row, "u")));

    private static final TableCheck LEAKY = new TableCheck(
            "hantush_W.csv",
            2304,
            row -> "u=" + row.getField("u") + " r/B=" + row.getField("r_over_B"),
            row -> LeakyWellFunction.of(number(row, "u"), number(row, "r_over_B")));

    private static final TableCheck STORING_BED = new TableCheck(
            "hantush1960_H.csv",
            169,
            row -> "u=" + row.getField("u") + " beta=" + row.getField("beta"),
            row -> StoringBedWellFunction.of(number(row, "u"), number(row, "beta")));

    private static final TableCheck FREE_FLOW = new TableCheck(
            "jacob_lohman_G.csv",
            145,
            row -> "alpha=" + row.getField("alpha"),
            row -> FreeFlowFunction.of(number(row, "alpha")));

    private static final TableCheck LARGE_DIAMETER = new TableCheck(
            "papadopulos_cooper.csv",
            170,
            row -> "u_w=" + row.getField("u_w") + " alpha=" + row.getField("alpha"),
            row -> LargeDiameterWellFunction.of(number(row, "u_w"), number(row, "alpha")));

    private static final Map<String, DoubleUnaryOperator> FUNCTIONS = Map.of(
            "K0", ModifiedBessel::k0,
            "K1", ModifiedBessel::k1,
            "I0", ModifiedBessel::i0,
            "I1", ModifiedBessel::i1,
            "expx_K0", ModifiedBessel::scaledK0,
            "x_K1", x -> x * ModifiedBessel.k1(x),
            "erfc", ErrorIntegral::complement,
            "ierfc", ErrorIntegral::integral,
            "4i2erfc", ErrorIntegral::fourTimesSecondIntegral);

    private static final TableCheck FUNCTION_TABLE = new TableCheck(
            "bessel_erfc.csv",
            249,
            row -> row.getField("function") + "(" + row.getField("x") + ")",
            row -> function(row).applyAsDouble(number(row, "x")));

    private static final StreamDepletion DEPLETION = new StreamDepletion(1, 1, 1);

    private static final TableCheck DEPLETION_RATE = new TableCheck(
            "stream_depletion.csv",
            51,
            row -> "t/F=" + row.getField("t_over_F"),
            row -> DEPLETION.rateShare(number(row, "t_over_F")));

    private static final TableCheck DEPLETION_VOLUME = new TableCheck(
            "stream_depletion.csv",
            51,
            row -> "t/F=" + row.getField("t_over_F"),
            row -> DEPLETION.volumeShare(number(row, "t_over_F")));

    private static final TableCheck DENSITY = new TableCheck(
            "water_density.csv", 21, row -> row.getField("t_C") + " °C", row -> Water.density(number(row, "t_C")));

    private TableCases() {}

    /** All of them. */
    public static List<ValidationCase> all() {
        return Stream.of(theis(), leaky(), bed(), freeFlow(), largeDiameter(), functions(), depletion(), density())
                .flatMap(List::stream)
                .toList();
    }

    private static List<ValidationCase> theis() {
        return List.of(
                recomputed("well-function", "Well function W(u) of Theis", "theis_W.csv", THEIS, "W_10dig"),
                theis(
                        "shammas-wang",
                        "FGO",
                        99,
                        new Source(
                                "Shammas and Wang",
                                2011,
                                "Fair, Geyer and Okun's Water and Wastewater Engineering, 3rd ed.",
                                "Table 3.2, p. 73",
                                Standing.READ)),
                theis(
                        "chin",
                        "CHIN",
                        23,
                        new Source(
                                "Chin",
                                2012,
                                "Water-Quality Engineering in Natural Systems, 2nd ed.",
                                "Table 5.2, column for no leakage (numbers of Wenzel 1942)",
                                Standing.READ)),
                theis(
                        "huisman",
                        "HUIS",
                        13,
                        new Source("Huisman", 1972, "Groundwater Recovery", "Table 4.1", Standing.QUOTED)),
                theis(
                        "abramowitz-stegun",
                        "AS5.1",
                        3,
                        new Source(
                                "Abramowitz and Stegun",
                                1964,
                                "Handbook of Mathematical Functions",
                                "Table 5.1, E1(x)",
                                Standing.MEMORY)));
    }

    private static ValidationCase theis(String name, String abbreviation, int expected, Source source) {
        return printed(
                "well-function-" + name,
                "Well function W(u) of Theis",
                source,
                findings -> THEIS.printed(
                        findings,
                        source,
                        expected,
                        row -> quoted(row, abbreviation),
                        text -> abbreviation + "=" + text,
                        "W_10dig"));
    }

    private static Optional<String> quoted(NamedCsvRecord row, String abbreviation) {
        return Arrays.stream(row.getField("published").split(";", -1))
                .filter(part -> part.startsWith(abbreviation + "="))
                .map(part -> part.substring(abbreviation.length() + 1))
                .findFirst();
    }

    private static List<ValidationCase> leaky() {
        Source source = new Source(
                "Chin",
                2012,
                "Water-Quality Engineering in Natural Systems, 2nd ed.",
                "Table 5.2 (numbers of Hantush 1956)",
                Standing.READ);
        String title = "Leaky well function W(u, r/B) of Hantush and Jacob";
        return List.of(
                recomputed("leaky-function", title, "hantush_W.csv", LEAKY, "W_8dig"),
                printed("leaky-function-chin", title, source, LEAKY, 171, "published", "W_8dig"));
    }

    private static List<ValidationCase> bed() {
        return List.of(recomputed(
                "storing-bed-function",
                "Function H(u, beta) of Hantush (1960) for a sealing bed that stores water",
                "hantush1960_H.csv",
                STORING_BED,
                "H_8dig"));
    }

    private static List<ValidationCase> freeFlow() {
        Source source = new Source(
                "Jacob and Lohman", 1952, "Transactions AGU 33(4), 559-569", "table of G(alpha)", Standing.MEMORY);
        String title = "Discharge function G(alpha) of a free-flowing bore";
        return List.of(
                recomputed("free-flow-function", title, "jacob_lohman_G.csv", FREE_FLOW, "G_8dig"),
                printed("free-flow-function-jacob-lohman", title, source, FREE_FLOW, 17, "published", "G_8dig"));
    }

    private static List<ValidationCase> largeDiameter() {
        Source source = new Source(
                "Papadopulos and Cooper", 1967, "Water Resources Research 3(1), 241-244", "Table 1", Standing.MEMORY);
        String title = "Function F(u, alpha) of a bore of large diameter";
        return List.of(
                recomputed("large-diameter-function", title, "papadopulos_cooper.csv", LARGE_DIAMETER, "F_8dig"),
                printed("large-diameter-function-papadopulos-cooper", title, source, findings -> {
                    for (NamedCsvRecord row : ReferenceTable.rows("papadopulos_cooper.csv", 170)) {
                        String printed = row.getField("published");
                        if (!printed.isEmpty()) {
                            findings.compare(Comparison.withPrinted(
                                    LARGE_DIAMETER.entry().apply(row),
                                    "-",
                                    printed,
                                    LARGE_DIAMETER.ours().applyAsDouble(row),
                                    Tolerance.share(
                                            1e-3,
                                            Double.parseDouble(printed),
                                            "0.1 %: four digits recalled from memory, six of the 28 are off by up to"
                                                    + " five units of the last")));
                        }
                    }
                }));
    }

    private static List<ValidationCase> functions() {
        Source source = new Source(
                "Abramowitz and Stegun",
                1964,
                "Handbook of Mathematical Functions",
                "Tables 7.1 and 9.8",
                Standing.MEMORY);
        String title = "Bessel functions K0, K1, I0, I1 and the integrals of the error function";
        return List.of(
                recomputed("special-functions", title, "bessel_erfc.csv", FUNCTION_TABLE, "value_10dig"),
                printed(
                        "special-functions-abramowitz-stegun",
                        title,
                        source,
                        FUNCTION_TABLE,
                        9,
                        "A_and_S",
                        "value_10dig"));
    }

    private static DoubleUnaryOperator function(NamedCsvRecord row) {
        DoubleUnaryOperator function = FUNCTIONS.get(row.getField("function"));
        if (function == null) {
            throw new IllegalStateException("table of functions: unknown function " + row.getField("function"));
        }
        return function;
    }

    private static List<ValidationCase> depletion() {
        Source source = new Source(
                "Jenkins",
                1968,
                "USGS Techniques of Water-Resources Investigations, Book 4, Chapter D1",
                "Table 1, reprinted in Hiscock (2005), Hydrogeology, Appendix 7, p. 327",
                Standing.READ);
        String rate = "Share of a bore's rate that a stream supplies, q/Q";
        String volume = "Share of a bore's volume that a stream has supplied, v/(Qt)";
        return List.of(
                recomputed("stream-depletion-rate", rate, "stream_depletion.csv", DEPLETION_RATE, "q_over_Q"),
                recomputed("stream-depletion-volume", volume, "stream_depletion.csv", DEPLETION_VOLUME, "v_over_Qt"),
                printed(
                        "stream-depletion-rate-jenkins",
                        rate,
                        source,
                        DEPLETION_RATE,
                        51,
                        "q_over_Q_Jenkins",
                        "q_over_Q"),
                printed(
                        "stream-depletion-volume-jenkins",
                        volume,
                        source,
                        DEPLETION_VOLUME,
                        51,
                        "v_over_Qt_Jenkins",
                        "v_over_Qt"));
    }

    private static List<ValidationCase> density() {
        Source source = new Source(
                "Kell",
                1975,
                "Journal of Chemical and Engineering Data 20(1), 97-105",
                "equation of density at one atmosphere",
                Standing.MEMORY);
        return List.of(new ValidationCase(
                "water-density",
                "Density of fresh water from 0 to 100 °C",
                Part.TABLES,
                List.of(source),
                "Heads of hot bores are referred to cold water with the right weight.",
                "Salt, gas and pressure, which the density leaves out.",
                ValidationCase.Pace.FAST,
                findings -> DENSITY.recomputed(findings, "rho_kg_m3", "kg/m³")));
    }

    private static Function<NamedCsvRecord, Optional<String>> field(String column) {
        return row -> Optional.of(row.getField(column)).filter(text -> !text.isEmpty());
    }

    private static ValidationCase recomputed(String name, String title, String file, TableCheck check, String column) {
        Source source = new Source(
                "General-purpose libraries",
                2026,
                "mpmath and SciPy, 25 to 40 digits, by two methods that agree",
                "reference table " + file,
                Standing.RECOMPUTED);
        return new ValidationCase(
                name + "-recomputed",
                title + ": every row, recomputed",
                Part.TABLES,
                List.of(source),
                "The function gives the recomputed digits in every row of the table.",
                OPEN,
                ValidationCase.Pace.FAST,
                findings -> check.recomputed(findings, column, "-"));
    }

    /** Case whose printed values stand in a column of their own. */
    private static ValidationCase printed(
            String name, String title, Source source, TableCheck check, int expected, String published, String exact) {
        return printed(
                name,
                title,
                source,
                findings -> check.printed(findings, source, expected, field(published), Function.identity(), exact));
    }

    private static ValidationCase printed(
            String name, String title, Source source, ValidationCase.Procedure procedure) {
        return new ValidationCase(
                name,
                title + ": as printed by " + source.brief(),
                Part.TABLES,
                List.of(source),
                "The function gives what the table prints, to its last digit, except where the table is wrong.",
                OPEN,
                ValidationCase.Pace.FAST,
                procedure);
    }
}
