package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.headfall.scenarios.recording.HeadGrid;
import org.headfall.scenarios.recording.RecordPlan;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.SealingBed;
import org.headfall.solver.flow.WaterBalance;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;

/** Reads {@code heads.nc} back. */
final class HeadsReader implements AutoCloseable {

    private final RecordedFile file;
    private final double[] days;

    HeadsReader(Path path) throws IOException {
        file = new RecordedFile(path);
        days = file.doubles("time");
    }

    String scenarioText() throws IOException {
        return file.global(GlobalAttributes.SCENARIO);
    }

    Aquifer aquifer() throws IOException {
        double[] transmissivity = file.doubles("transmissivity");
        double[] status = file.doubles("cell_status");
        boolean[] active = new boolean[status.length];
        for (int cell = 0; cell < active.length; cell++) {
            active[cell] = status[cell] != 0;
        }
        return new Aquifer(
                new RectilinearGrid(axis("x_bnds"), axis("y_bnds")),
                transmissivity,
                file.has("transmissivity_y") ? file.doubles("transmissivity_y") : transmissivity,
                file.doubles("storativity"),
                file.doubles("aquifer_top"),
                file.doubles("aquifer_bottom"),
                active);
    }

    private Axis axis(String bounds) throws IOException {
        double[] pairs = file.doubles(bounds);
        double[] edges = new double[pairs.length / 2 + 1];
        for (int i = 0; i < edges.length - 1; i++) {
            edges[i] = pairs[2 * i];
        }
        edges[edges.length - 1] = pairs[pairs.length - 1];
        return Axis.ofEdges(edges);
    }

    Optional<SealingBed> sealingBed() throws IOException {
        if (!file.has("sealing_bed_thickness")) {
            return Optional.empty();
        }
        return Optional.of(new SealingBed(
                file.doubles("sealing_bed_thickness"),
                file.doubles("sealing_bed_conductivity"),
                file.doubles("sealing_bed_specific_storage"),
                file.doubles("head_above_sealing_bed")));
    }

    double[] ground() throws IOException {
        return file.doubles("ground_level");
    }

    double[] notConfinedSince() throws IOException {
        return file.doubles("not_confined_since");
    }

    /** Heads at the start, at the report dates and at the end. */
    List<HeadGrid> grids(RunDescription description) throws IOException {
        double[] kept = RecordPlan.of(description, new double[0], new double[0]).keptDays();
        List<HeadGrid> grids = new ArrayList<>();
        for (int record = 0; record < days.length; record++) {
            if (Arrays.binarySearch(kept, days[record]) >= 0) {
                grids.add(new HeadGrid(days[record], file.record("hydraulic_head", record)));
            }
        }
        return grids;
    }

    List<WaterBalance> balances() throws IOException {
        List<String> names = file.names("balance_term_name");
        double[] kinds = file.doubles("balance_term_kind");
        double[] largest = file.doubles("balance_largest_step_discrepancy");
        List<WaterBalance> balances = new ArrayList<>();
        for (int record = 1; record < days.length; record++) {
            double[] inflow = file.record("balance_inflow", record);
            double[] outflow = file.record("balance_outflow", record);
            List<WaterBalance.Term> terms = new ArrayList<>();
            for (int i = 0; i < names.size(); i++) {
                WaterBalance.Kind kind = BalanceVariables.KIND_ORDER.get((int) kinds[i]);
                terms.add(new WaterBalance.Term(names.get(i), kind, inflow[i], outflow[i]));
            }
            balances.add(new WaterBalance(days[record - 1], days[record], terms, largest[record]));
        }
        return balances;
    }

    @Override
    public void close() throws IOException {
        file.close();
    }
}
