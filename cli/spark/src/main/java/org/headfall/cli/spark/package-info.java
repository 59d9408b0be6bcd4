/**
 * Sweeps on a cluster of Apache Spark. {@code spark-submit} runs {@link org.headfall.cli.spark.SparkProgram}, which takes the
 * commands of {@code headfall}; the runs of {@code sweep} are made by the cluster ({@link
 * org.headfall.cli.spark.SparkEngine}), and what comes of each is recorded here as it arrives, in the same store.
 *
 * <p>Of Spark a single call is used, so that one jar runs on versions whose Scala libraries do not fit together.
 */
@NullMarked
package org.headfall.cli.spark;

import org.jspecify.annotations.NullMarked;
