package org.headfall.scenarios.siting;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.headfall.scenarios.planning.PlanningMap;
import org.headfall.scenarios.planning.PlanningPage;
import org.headfall.scenarios.planning.PlanningTable;
import org.headfall.scenarios.quantity.DischargeUnit;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.results.UncountedCsv;
import org.headfall.scenarios.scenario.SitingSpecification;

/** What was found about sites as a page: the answer, the map, the sites and what they take of each limit. */
final class SitingPage {

    private SitingPage() {}

    /**
     * The page.
     *
     * @param result what was found
     * @param check what the simulator says of the sites, if it was asked
     */
    static PlanningPage of(SitingResult result, Optional<SiteCheck> check) {
        List<PlanningTable> tables = new ArrayList<>();
        tables.add(sites(result));
        tables.add(effects(result));
        check.ifPresent(found -> tables.add(check(result, found)));
        if (!result.uncounted().isEmpty()) {
            tables.add(new PlanningTable(
                    "uncounted",
                    "Limits that were not counted",
                    UncountedCsv.NAME,
                    List.of("Limit", "Why"),
                    result.uncounted().stream()
                            .map(one -> List.of(one.limit(), one.reason()))
                            .toList()));
        }
        return new PlanningPage(
                "Where new bores can go",
                result.run().title(),
                result.run().provenance().toolVersion(),
                answers(result),
                List.of(map(result)),
                tables,
                List.of(),
                result.cautions());
    }

    private static List<String> answers(SitingResult result) {
        List<String> answers = new ArrayList<>();
        int found = result.sites().size();
        int wanted = result.asked().sites();
        answers.add(question(result));
        answers.add(
                found == wanted
                        ? "Sites found: " + found + "."
                        : "Sites found: " + found + " of " + wanted + "; " + result.missing() + ".");
        for (Site site : result.sites()) {
            answers.add(String.format(
                    Locale.ROOT,
                    "Site %d, easting %.2f km, northing %.2f km: %.1f L/s with a lift of %.1f m and %.0f kWh/ML; at most"
                            + " %.1f L/s there, decided by: %s.",
                    site.number(),
                    site.x() / 1000,
                    site.y() / 1000,
                    litres(site.rate()),
                    site.lift(),
                    site.energy(),
                    litres(site.largestRate()),
                    site.ruling()));
        }
        result.uncounted().forEach(limit -> answers.add("Not counted: " + limit.sentence() + "."));
        return answers;
    }

    private static String question(SitingResult result) {
        SitingSpecification asked = result.asked();
        String rate = asked.rate().isPresent()
                ? String.format(
                        Locale.ROOT, "steady %.1f L/s", litres(asked.rate().getAsDouble()))
                : "as much as it can give";
        return String.format(
                Locale.ROOT,
                "Asked for: %s, %s from each until %s, lifted to %.1f m above the ground, with every counted limit kept.",
                asked.sites() == 1 ? "1 site" : asked.sites() + " sites",
                rate,
                date(result, asked.days()),
                asked.lifting().deliveryHead());
    }

    private static double litres(double rate) {
        return DischargeUnit.LITRES_PER_SECOND.of(rate);
    }

    private static PlanningMap map(SitingResult result) {
        RunDescription run = result.run();
        List<PlanningMap.Place> places = new ArrayList<>();
        run.bores().forEach(bore -> places.add(place(PlanningMap.Kind.BORE, bore)));
        run.springs().forEach(spring -> places.add(place(PlanningMap.Kind.SPRING, spring)));
        run.points().forEach(point -> places.add(place(PlanningMap.Kind.POINT, point)));
        for (Site site : result.sites()) {
            places.add(new PlanningMap.Place(
                    PlanningMap.Kind.SITE, site.name(), String.valueOf(site.number()), site.x(), site.y()));
        }
        double[] ruling = new double[result.ruling().length];
        Arrays.setAll(ruling, cell -> Double.isNaN(result.largestRate()[cell]) ? Double.NaN : result.ruling()[cell]);
        return new PlanningMap(
                run.grid().x().centres(),
                run.grid().y().centres(),
                Arrays.stream(result.largestRate()).map(SitingPage::litres).toArray(),
                ruling,
                result.reasons(),
                result.lift(),
                result.energy(),
                places);
    }

    private static PlanningMap.Place place(PlanningMap.Kind kind, Station station) {
        return new PlanningMap.Place(kind, station.name(), "", station.x(), station.y());
    }

    private static PlanningTable sites(SitingResult result) {
        return new PlanningTable(
                "sites",
                "Chosen sites, each counted with those before it",
                "sites.csv",
                List.of(
                        "Site",
                        "Rate (L/s)",
                        "Rate (ML/yr)",
                        "Largest rate here (L/s)",
                        "Decided by",
                        "Lowest level in the bore (m above datum)",
                        "Lift (m)",
                        "Energy (kWh/ML)"),
                result.sites().stream()
                        .map(site -> List.of(
                                site.name(),
                                number(litres(site.rate()), 1),
                                number(DischargeUnit.MEGALITRES_PER_YEAR.of(site.rate()), 0),
                                number(litres(site.largestRate()), 1),
                                site.ruling(),
                                number(site.level(), 1),
                                number(site.lift(), 1),
                                number(site.energy(), 0)))
                        .toList());
    }

    private static PlanningTable effects(SitingResult result) {
        List<List<String>> rows = new ArrayList<>();
        for (Site site : result.sites()) {
            for (Site.Effect effect : site.effects()) {
                rows.add(List.of(
                        site.name(),
                        effect.limit(),
                        date(result, effect.day()),
                        number(effect.effect(), 3),
                        number(effect.left(), 3),
                        effect.unit()));
            }
        }
        return new PlanningTable(
                "effects",
                "What each site takes of each limit on the day on which least is left; the numerical error of each limit is kept"
                        + " free",
                "site-effects.csv",
                List.of("Site", "Limit", "On", "Effect of the site", "Left with all sites", "Unit"),
                rows);
    }

    private static PlanningTable check(SitingResult result, SiteCheck check) {
        return new PlanningTable(
                "check",
                "Effects of all sites together, as predicted and by the simulator",
                "site-check.csv",
                List.of("Limit", "On", "Predicted", "By the simulator", "Unit"),
                check.lines().stream()
                        .map(line -> List.of(
                                line.limit(),
                                date(result, line.day()),
                                number(line.predicted(), 3),
                                number(line.simulated(), 3),
                                line.unit()))
                        .toList());
    }

    private static String date(SitingResult result, double day) {
        return result.run().calendar().at(day).toLocalDate().toString();
    }

    private static String number(double value, int decimals) {
        return String.format(Locale.ROOT, "%." + decimals + "f", value);
    }
}
