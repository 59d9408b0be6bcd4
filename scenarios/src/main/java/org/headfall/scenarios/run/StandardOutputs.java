package org.headfall.scenarios.run;

import java.util.ArrayList;
import java.util.List;
import org.headfall.scenarios.document.UsedFile;
import org.headfall.scenarios.evidence.EvidenceFiles;
import org.headfall.scenarios.report.ReportWriter;
import org.headfall.scenarios.report.RunReport;
import org.headfall.scenarios.results.KeptInputs;
import org.headfall.scenarios.results.MapRasters;
import org.headfall.scenarios.results.RunOutput;
import org.headfall.scenarios.results.StationFeatures;
import org.headfall.scenarios.results.SummaryFile;
import org.headfall.scenarios.results.Tables;

/** The files that every run makes besides its two NetCDF files. */
public final class StandardOutputs {

    private StandardOutputs() {}

    /**
     * The outputs, in the order in which they are written: the summary last, since it has hashes of all others.
     *
     * @param inputs the scenario document and the files that it names
     * @return the outputs
     */
    public static List<RunOutput> all(List<UsedFile> inputs) {
        List<RunOutput> outputs = new ArrayList<>(besidesReport(inputs));
        outputs.add(
                outputs.size() - 1,
                (folder, run) -> ReportWriter.write(RunReport.of(run, folder), folder.resolve(ReportWriter.NAME)));
        return outputs;
    }

    /**
     * The outputs that hold the numbers of a run, without the page that shows them.
     *
     * @param inputs the scenario document and the files that it names
     * @return the outputs
     */
    public static List<RunOutput> besidesReport(List<UsedFile> inputs) {
        return List.of(
                new KeptInputs(inputs),
                Tables::write,
                new MapRasters(),
                new StationFeatures(),
                EvidenceFiles::write,
                new SummaryFile()::write);
    }
}
