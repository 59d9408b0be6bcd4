package org.headfall.scenarios.results;

import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.headfall.solver.flow.WaterBalance;
import ucar.ma2.Array;
import ucar.ma2.DataType;
import ucar.nc2.Attribute;
import ucar.nc2.Variable;

/** Water balance of the periods of {@code heads.nc}: volumes of each term, and what the numbers fail to account for. */
final class BalanceVariables {

    /** Kinds by their number in the file. */
    static final List<WaterBalance.Kind> KIND_ORDER = List.of(WaterBalance.Kind.values());

    private static final String[] KINDS = KIND_ORDER.stream()
            .map(kind -> kind.name().toLowerCase(Locale.ROOT))
            .toArray(String[]::new);

    private final Variable names;
    private final Variable kinds;
    private final Variable inflow;
    private final Variable outflow;
    private final Variable discrepancy;
    private final Variable largestStepDiscrepancy;

    private BalanceVariables(
            Variable names,
            Variable kinds,
            Variable inflow,
            Variable outflow,
            Variable discrepancy,
            Variable largestStepDiscrepancy) {
        this.names = names;
        this.kinds = kinds;
        this.inflow = inflow;
        this.outflow = outflow;
        this.discrepancy = discrepancy;
        this.largestStepDiscrepancy = largestStepDiscrepancy;
    }

    static BalanceVariables define(GrowingFile file, List<WaterBalance.Term> terms) {
        file.dimension("balance_term", terms.size());
        file.dimension(
                "balance_name_strlen",
                GrowingFile.longest(terms.stream().map(WaterBalance.Term::name).toList()));
        return new BalanceVariables(
                file.variable(
                        "balance_term_name",
                        DataType.CHAR,
                        "balance_term balance_name_strlen",
                        "long_name",
                        "name of the water balance term",
                        "_Encoding",
                        "UTF-8"),
                kinds(file),
                volume(file, "balance_inflow", "water into the aquifer since the previous record", true),
                volume(file, "balance_outflow", "water out of the aquifer since the previous record", true),
                volume(file, "balance_discrepancy", "total inflow less total outflow since the previous record", false),
                largestStepDiscrepancy(file));
    }

    private static Variable kinds(GrowingFile file) {
        Variable kinds = file.variable(
                "balance_term_kind",
                DataType.BYTE,
                "balance_term",
                "long_name",
                "what the water balance term counts",
                "flag_meanings",
                Arrays.stream(KINDS).collect(Collectors.joining(" ")));
        byte[] values = new byte[KINDS.length];
        for (byte i = 0; i < values.length; i++) {
            values[i] = i;
        }
        kinds.addAttribute(
                new Attribute("flag_values", Array.factory(DataType.BYTE, new int[] {values.length}, values)));
        return kinds;
    }

    private static Variable volume(GrowingFile file, String name, String longName, boolean byTerm) {
        Variable volume = file.variable(
                name,
                DataType.DOUBLE,
                byTerm ? "time balance_term" : "time",
                "long_name",
                longName,
                "units",
                "m3",
                "cell_methods",
                "time: sum");
        if (byTerm) {
            volume.addAttribute(new Attribute("coordinates", "balance_term_name"));
        }
        volume.addAttribute(new Attribute("_FillValue", GrowingFile.DOUBLE_FILL));
        return volume;
    }

    private static Variable largestStepDiscrepancy(GrowingFile file) {
        Variable largest = file.variable(
                "balance_largest_step_discrepancy",
                DataType.DOUBLE,
                "time",
                "long_name",
                "largest discrepancy of a time step over its throughput since the previous record",
                "units",
                "1",
                "cell_methods",
                "time: maximum");
        largest.addAttribute(new Attribute("_FillValue", GrowingFile.DOUBLE_FILL));
        return largest;
    }

    void writeTerms(GrowingFile file, List<WaterBalance.Term> terms) throws IOException {
        file.writeNames(names, terms.stream().map(WaterBalance.Term::name).toList());
        byte[] ordinals = new byte[terms.size()];
        for (int i = 0; i < ordinals.length; i++) {
            ordinals[i] = (byte) KIND_ORDER.indexOf(terms.get(i).kind());
        }
        file.write(kinds, new int[] {0}, Array.factory(DataType.BYTE, new int[] {ordinals.length}, ordinals));
    }

    /** Writes the balance of a record; the first record ends no period and is filled. */
    void write(GrowingFile file, int record, WaterBalance balance) throws IOException {
        int terms = balance.terms().size();
        double[] in = new double[terms];
        double[] out = new double[terms];
        boolean period = balance.toDay() > balance.fromDay();
        for (int i = 0; i < terms; i++) {
            in[i] = period ? balance.terms().get(i).inflow() : GrowingFile.DOUBLE_FILL;
            out[i] = period ? balance.terms().get(i).outflow() : GrowingFile.DOUBLE_FILL;
        }
        file.writeDoubles(inflow, new int[] {record, 0}, new int[] {1, terms}, in);
        file.writeDoubles(outflow, new int[] {record, 0}, new int[] {1, terms}, out);
        single(file, discrepancy, record, period ? balance.discrepancy() : GrowingFile.DOUBLE_FILL);
        single(
                file,
                largestStepDiscrepancy,
                record,
                period ? balance.largestStepDiscrepancy() : GrowingFile.DOUBLE_FILL);
    }

    private static void single(GrowingFile file, Variable variable, int record, double value) throws IOException {
        file.writeDoubles(variable, new int[] {record}, new int[] {1}, new double[] {value});
    }
}
