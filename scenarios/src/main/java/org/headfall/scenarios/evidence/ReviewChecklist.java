package org.headfall.scenarios.evidence;

import java.util.ArrayList;
import java.util.List;
import org.headfall.scenarios.results.FinishedRun;

/**
 * What a reviewer of a groundwater model looks for, in words of our own. The items follow the review and compliance
 * checklists of the Australian groundwater modelling guidelines (Barnett and others 2012, Waterlines 82, chapter 9) and the
 * American guides named beside them: ASTM D5447 (application of a flow model), D5490 (comparison with data), D5609
 * (boundaries), D5610 (initial conditions), D5611 (sensitivity), D5718 (documentation and archive). Numbers of chapters,
 * tables and guides are from memory.
 */
final class ReviewChecklist {

    static final String GUIDELINES = "Barnett and others 2012";

    private ReviewChecklist() {}

    static List<CheckedItem> of(FinishedRun run) {
        List<CheckedItem> items = new ArrayList<>();
        items.addAll(new PlanChecks(run).items());
        items.addAll(new NumericalChecks(run).items());
        items.addAll(new DataChecks(run).items());
        items.addAll(forPeople());
        return items;
    }

    private static List<CheckedItem> forPeople() {
        return List.of(
                CheckedItem.open(
                        "The picture of the aquifer that the model rests on is that of the data, and others were weighed",
                        GUIDELINES + ", chapter 3; ASTM D5447",
                        "Look at logs, tests, chemistry and the section; the report shows the one picture that was run."),
                CheckedItem.open(
                        "Transmissivity, storativity and leakage are plausible for the rock and agree with the tests",
                        GUIDELINES + ", chapter 5",
                        "Look at where each value comes from; files and their SHA-256 are in the report."),
                CheckedItem.open(
                        "The conclusion stays the same within the range of what is not known",
                        GUIDELINES + ", chapter 7; ASTM D5611",
                        "One run cannot show it: run a sweep over what is not known (headfall sweep)."),
                CheckedItem.open(
                        "Bores and users that exist are all in the model, with what they truly take",
                        "common practice, no source",
                        "Compare the table of bores with the register and with meters."),
                CheckedItem.open(
                        "The model is fit for the decision",
                        GUIDELINES + ", chapter 9",
                        "People who know the ground and the law have to say so."));
    }
}
