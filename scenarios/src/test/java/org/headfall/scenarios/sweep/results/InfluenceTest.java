package org.headfall.scenarios.sweep.results;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.headfall.scenarios.document.DocumentNode;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.sweep.document.Input;
import org.headfall.scenarios.sweep.document.Variable;
import org.headfall.scenarios.sweep.document.Variation;
import org.headfall.scenarios.sweep.figures.KeptFigure;
import org.headfall.scenarios.sweep.figures.PlaceFigure;
import org.headfall.scenarios.sweep.results.Influence.RankCorrelation;
import org.headfall.scenarios.sweep.statistics.GroupedMeans;
import org.headfall.scenarios.sweep.statistics.SobolIndices;
import org.headfall.scenarios.sweep.statistics.Swing;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class InfluenceTest {

    private static final RankCorrelation NO_RANK = new RankCorrelation(Double.NaN, Double.NaN, Double.NaN);

    /** Two measures of one influence: difference of the tenths with its error, and the interval of the rank correlation. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                     3 | 1 | 0.4  | 0.2  | 0.6  | rises with it
                    -3 | 1 | -0.4 | -0.6 | -0.2 | falls with it
                     3 | 4 | 0.1  | -0.1 | 0.3  | not told apart from none
                     3 | 4 | 0.4  | 0.2  | 0.6  | rises with it by ranks; the bar is not told apart from none
                     3 | 4 | -0.4 | -0.6 | -0.2 | falls with it by ranks; the bar is not told apart from none
                     3 | 1 | 0.1  | -0.1 | 0.3  | greater in its highest tenth than in its lowest, by ranks not told apart from none
                     3 | 1 | -0.4 | -0.6 | -0.2 | greater in its highest tenth than in its lowest, yet falls with it by ranks: it does not go one way
                    """)
    void saysWhereMeasuresDiffer(double difference, double error, double rank, double low, double high, String words) {
        assertEquals(
                words,
                influence("T", difference, error, new RankCorrelation(rank, low, high))
                        .words());
    }

    @Test
    void saysTheSameShorterInPictures() {
        RankCorrelation none = new RankCorrelation(0.1, -0.1, 0.3);
        RankCorrelation falls = new RankCorrelation(-0.4, -0.6, -0.2);
        assertEquals("does not go one way", influence("T", 3, 1, falls).shortWords());
        assertEquals("falls with it", influence("T", -3, 1, falls).shortWords());
        assertEquals(
                "falls by ranks, bar not told apart",
                influence("T", 3, 4, falls).shortWords());
        assertEquals(
                "greater where it is high, no trend by ranks",
                influence("T", 3, 1, none).shortWords());
        assertEquals("not told apart from none", influence("T", 3, 4, none).shortWords());
    }

    @Test
    void namesTheChoiceThatMakesTheDifference() {
        Variable pictures =
                new Variable("picture", List.of(), listed("sand.yaml", "clay.yaml", "both.yaml"), false, "");
        Swing swing = new Swing(10, 14, 3, 1, 1.5, 0.01);
        Influence influence = new Influence(
                "loss",
                pictures,
                NO_RANK,
                Optional.empty(),
                swing,
                GroupedMeans.NONE,
                Influence.Indices.NONE,
                0.01,
                64,
                0.005);
        assertEquals("least with both.yaml, greatest with sand.yaml", influence.words());
        Swing unsure = new Swing(10, 14, 3, 1, 4.5, 0.01);
        assertEquals(
                "values not told apart",
                new Influence(
                                "loss",
                                pictures,
                                NO_RANK,
                                Optional.empty(),
                                unsure,
                                GroupedMeans.NONE,
                                Influence.Indices.NONE,
                                0.01,
                                64,
                                0.005)
                        .words());
        assertTrue(sentence(influence)
                .contains("10 m with both.yaml, 14 m with sand.yaml, in the mean (difference 4 ± 1.5"));
    }

    /** Rounding rises and falls with something too. */
    @Test
    void tellsNothingApartBelowWhatRunsAreExactTo() {
        RankCorrelation rises = new RankCorrelation(1, 0.9, 1);
        assertEquals(
                "not told apart from none", influence("S", 1e-6, 1e-9, rises).words());
    }

    @Test
    void leavesOpenWhatSamplingLeavesOpen() {
        RankCorrelation rises = new RankCorrelation(0.5, 0.3, 0.7);
        RankCorrelation nothing = new RankCorrelation(0.1, -0.1, 0.3);
        Influence first = influence("T", 5, 1, rises);
        Influence near = influence("S", 4, 1, rises);
        Influence far = influence("K", 2, 1, rises);
        Influence none = influence("n", 1, 6, nothing);
        String sentence = sentence(first, near, far, none);
        assertTrue(sentence.contains("depends most on T: 0 m where it is low, 5 m where it is high"), sentence);
        assertTrue(sentence.contains("Sampling leaves open whether it counts more than S."), sentence);
        assertTrue(sentence.contains("Not told apart from no influence: n."), sentence);
        assertFalse(sentence(none).contains("depends most"));
        assertTrue(sentence(none).contains("the influence of no variable is told apart from none in these 64 samples"));
    }

    /** Ten runs leave one in each tenth, so the difference has no error, and no order of the two is certain. */
    @Test
    void isNotCertainWhereTheErrorIsNotKnown() {
        double[] rising = IntStream.range(0, 10).mapToDouble(i -> i).toArray();
        Swing swing = Swing.of(rising, rising, IntStream.range(0, 10).toArray());
        Swing less = Swing.of(
                rising,
                IntStream.range(0, 10).mapToDouble(i -> i / 2.0).toArray(),
                IntStream.range(0, 10).toArray());
        RankCorrelation rises = new RankCorrelation(1, 0.9, 1);
        Influence first = influence("T", swing, rises, Influence.Indices.NONE);
        Influence second = influence("S", less, rises, Influence.Indices.NONE);
        String sentence = sentence(first, second);
        assertTrue(sentence.contains("(difference 9, error not known: too few samples)"), sentence);
        assertTrue(sentence.contains("Sampling leaves open whether it counts more than S."), sentence);
    }

    /** Sums over every combination cancel but for rounding, which has a sign. */
    @Test
    void takesRoundingForNoCorrelation() {
        RankCorrelation rounding = new RankCorrelation(-1e-17, -1e-17, -1e-17);
        assertEquals(
                "greater in its highest tenth than in its lowest, by ranks not told apart from none",
                influence("T", 3, 0, rounding).words());
        assertEquals(
                "rises with it",
                influence("T", 3, 0, new RankCorrelation(0.2, 0.2, 0.2)).words());
    }

    /**
     * Jansen (1999): the total index times the variance is half of the mean square of the changes by one variable, which no
     * noise leaves at 0.
     */
    @Test
    void tellsNoTotalIndexApartThatNoiseMakes() {
        SplittableRandom random = new SplittableRandom(3);
        int samples = 64;
        double[] figures = new double[4 * samples];
        for (int k = 0; k < samples; k++) {
            double a = random.nextDouble();
            double b = random.nextDouble();
            figures[k] = a + 1e-4 * random.nextGaussian();
            figures[samples + k] = b + 1e-4 * random.nextGaussian();
            figures[2 * samples + k] = b + 1e-4 * random.nextGaussian();
            figures[3 * samples + k] = a + 1e-4 * random.nextGaussian();
        }
        SobolIndices indices = SobolIndices.of(figures, 2);
        Swing none = new Swing(0, 0.001, 1, 2, 0.1, 0.01);
        assertTrue(indices.total()[1] > 1.96 * indices.totalError()[1], "noise has a total index");
        assertFalse(influence("n", none, NO_RANK, indices(indices, 1)).isToldApart());
        assertTrue(influence("T", none, NO_RANK, indices(indices, 0)).isToldApart());
    }

    /** A figure that rises and falls again, as 4 T (1 - T) does, has no rank correlation and equal ends. */
    @Test
    void tellsAHumpApart() {
        SplittableRandom random = new SplittableRandom(5);
        double[] variable = random.doubles(60).toArray();
        double[] figure = Arrays.stream(variable)
                .map(t -> 4 * t * (1 - t) + 0.2 * random.nextGaussian())
                .toArray();
        int[] samples = IntStream.range(0, 60).toArray();
        GroupedMeans groups = GroupedMeans.of(variable, figure, samples);
        RankCorrelation none = new RankCorrelation(0.1, -0.2, 0.3);
        Swing ends = new Swing(0.2, 0.3, 0.1, 0.9, 0.3, 0.5);
        Variable of = new Variable("T", List.of(), listed("1", "2"), true, "");
        Influence hump = new Influence(
                "loss",
                of,
                none,
                Optional.empty(),
                ends,
                groups,
                Influence.Indices.NONE,
                12 * groups.probability(),
                60,
                0.005);
        assertTrue(hump.isToldApart());
        assertEquals("does not go one way", hump.shortWords());
        assertTrue(hump.words().startsWith("does not go one way"), hump.words());
        assertTrue(sentence(hump).contains("depends most on T"));
        Influence other = influence("S", 0.5, 0.1, new RankCorrelation(0.4, 0.2, 0.6));
        assertTrue(hump.weight() > other.weight());
    }

    /** What one of twelve measures shows once in twelve times is nothing (Dunn 1961). */
    @Test
    void takesAllMeasuresTogether() {
        Variable of = new Variable("T", List.of(), listed("1", "2"), true, "");
        Influence picked = new Influence(
                "loss",
                of,
                new RankCorrelation(0.3, 0.05, 0.5),
                Optional.empty(),
                new Swing(0, 3, 1, 2, 2.5, 0.03),
                GroupedMeans.NONE,
                Influence.Indices.NONE,
                12 * 0.03,
                60,
                0.005);
        assertFalse(picked.isToldApart());
        assertEquals("not told apart from none", picked.words());
    }

    /** What goes along with another that counts has a rank correlation too, but none once the other is held. */
    @Test
    void saysWhatOnlyGoesAlong() {
        RankCorrelation rises = new RankCorrelation(0.4, 0.2, 0.6);
        Influence along = correlated(rises, new RankCorrelation(-0.1, -0.3, 0.1));
        assertEquals("goes along with T (0.4), not told apart on its own", along.words());
        assertFalse(along.isToldApart());
        Influence both = correlated(rises, new RankCorrelation(0.3, 0.1, 0.5));
        assertEquals("rises with it; correlated with T (0.4), by itself it rises", both.words());
        assertTrue(both.isToldApart());
    }

    private static Influence correlated(RankCorrelation rank, RankCorrelation alone) {
        return new Influence(
                "loss",
                new Variable("S", List.of(), listed("1", "2"), true, ""),
                rank,
                Optional.of(new Influence.Alone("T (0.4)", alone)),
                new Swing(0, 3, 1, 2, 1, 0.001),
                GroupedMeans.NONE,
                Influence.Indices.NONE,
                0.01,
                64,
                0.005);
    }

    private static Influence.Indices indices(SobolIndices of, int variable) {
        return new Influence.Indices(
                OptionalDouble.of(of.first()[variable]),
                OptionalDouble.of(of.total()[variable]),
                of.firstError()[variable],
                of.totalError()[variable],
                of.variance());
    }

    /** A choice may count beside others though its values have the same means. */
    @Test
    void saysWhereChoicesCountOnlyByTheirTotalIndex() {
        Variable pictures = new Variable("picture", List.of(), listed("sand.yaml", "clay.yaml"), false, "");
        Influence.Indices counts = new Influence.Indices(OptionalDouble.of(0), OptionalDouble.of(0.6), 0.05, 0.05, 4);
        Influence influence = new Influence(
                "loss",
                pictures,
                NO_RANK,
                Optional.empty(),
                new Swing(10, 11, 2, 1, 1.5, 0.01),
                GroupedMeans.NONE,
                counts,
                0.01,
                64,
                0.005);
        assertTrue(influence.isToldApart());
        assertEquals("counts, but not by the means of its values", influence.words());
        assertEquals(influence.words(), influence.shortWords());
        String sentence = sentence(influence);
        assertTrue(sentence.contains("depends most on picture"), sentence);
        assertTrue(sentence.contains("(counts, but not by the means of its values)"), sentence);
    }

    /** Sobol (1993): a first index is no greater than the total one. */
    @Test
    void saysWhereIndicesContradictThemselves() {
        Swing swing = new Swing(0, 3, 1, 2, 1, 0.01);
        Influence.Indices few = new Influence.Indices(OptionalDouble.of(1.096), OptionalDouble.of(0.717), 0.3, 0.2, 4);
        Influence.Indices enough =
                new Influence.Indices(OptionalDouble.of(0.72), OptionalDouble.of(0.717), 0.3, 0.2, 4);
        RankCorrelation rises = new RankCorrelation(0.5, 0.3, 0.7);
        assertTrue(sentence(influence("T", swing, rises, few)).contains("too few samples"));
        assertFalse(sentence(influence("T", swing, rises, enough)).contains("too few samples"));
    }

    private static Influence influence(String name, Swing swing, RankCorrelation rank, Influence.Indices indices) {
        return new Influence(
                "loss",
                new Variable(name, List.of(), listed("1", "2"), true, ""),
                rank,
                Optional.empty(),
                swing,
                GroupedMeans.NONE,
                indices,
                0.01,
                64,
                0.005);
    }

    private static String sentence(Influence... influences) {
        KeptFigure loss = new PlaceFigure("loss", PlaceFigure.Quantity.LOSS, "Coolabah Spring", 3652);
        return new Dependence(loss, List.of(influences), Optional.empty()).sentence();
    }

    private static Influence influence(String name, double difference, double error, RankCorrelation rank) {
        Variable variable = new Variable(name, List.of(), listed("1", "2"), true, "");
        return new Influence(
                "loss",
                variable,
                rank,
                Optional.empty(),
                new Swing(0, difference, 1, 2, error, 0.01),
                GroupedMeans.NONE,
                Influence.Indices.NONE,
                0.01,
                64,
                0.005);
    }

    private static Variation listed(String... values) {
        Place place = Place.ofFile("sweep.yaml");
        return new Variation.Listed(
                Arrays.stream(values)
                        .map(text -> new Input(new DocumentNode.Scalar(place, text, false), 1, text))
                        .toList(),
                false);
    }
}
