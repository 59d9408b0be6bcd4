package org.headfall.scenarios.run;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.headfall.scenarios.assembly.Model;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.scenario.BoreOperation;
import org.headfall.scenarios.scenario.BoreSpecification;
import org.headfall.scenarios.scenario.Scenario;
import org.headfall.solver.bore.Bore;

/** Makes the places of a scenario whose series are recorded. */
final class StationPlanner {

    private final Scenario scenario;
    private final Model model;

    StationPlanner(Scenario scenario, Model model) {
        this.scenario = scenario;
        this.model = model;
    }

    /** Bores, then springs, then protected points, each in the order of the document. */
    List<Station> stations() {
        List<Station> stations = new ArrayList<>();
        for (int i = 0; i < scenario.bores().size(); i++) {
            stations.add(
                    boreSite(scenario.bores().get(i), model.problem().bores().get(i)));
        }
        scenario.springs()
                .forEach(spring -> stations.add(new Station.SpringSite(
                        spring.name(),
                        spring.position().x(),
                        spring.position().y(),
                        groundAt(spring.position().x(), spring.position().y()),
                        spring.outlet(),
                        spring.conductance())));
        scenario.protectedPoints()
                .forEach(point -> stations.add(new Station.ProtectedPoint(
                        point.name(),
                        point.position().x(),
                        point.position().y(),
                        groundAt(point.position().x(), point.position().y()),
                        OptionalDouble.empty())));
        return stations;
    }

    private Station boreSite(BoreSpecification bore, Bore assembled) {
        double x = bore.position().x();
        double y = bore.position().y();
        return new Station.BoreSite(
                bore.name(),
                x,
                y,
                bore.levels().ground().orElse(groundAt(x, y)),
                bore.levels().outlet(),
                bore.levels().pumpIntake(),
                bore.levels().pumpingFloor(),
                model.problem().aquifer().top()[cell(x, y)],
                bore.screenRadius(),
                assembled.wellLoss(),
                bore.completion().temperature().map(given -> assembled.column()),
                bore.holder(),
                bore.group() == BoreSpecification.Group.PROPOSED,
                use(bore),
                OperationWords.of(bore));
    }

    private static Station.BoreSite.Use use(BoreSpecification bore) {
        if (has(bore, BoreOperation.Pumped.class) || has(bore, BoreOperation.PumpedByCurve.class)) {
            return Station.BoreSite.Use.PUMPED;
        }
        return has(bore, BoreOperation.FreeFlow.class) ? Station.BoreSite.Use.FREE_FLOWING : Station.BoreSite.Use.IDLE;
    }

    private static boolean has(BoreSpecification bore, Class<? extends BoreOperation> operation) {
        return bore.phases().stream().anyMatch(phase -> operation.isInstance(phase.operation()));
    }

    private int cell(double x, double y) {
        return model.problem().aquifer().grid().locate(x, y);
    }

    private double groundAt(double x, double y) {
        return model.ground()[cell(x, y)];
    }
}
