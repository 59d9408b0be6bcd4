package org.headfall.scenarios.sweep.results;

import java.util.Optional;

/** Which way a figure goes with a variable, as far as the measures of an {@link Influence} tell. */
sealed interface Way {

    /** In words that stand for themselves; they say so where two measures differ. */
    String words();

    /** In a few words, for a picture. */
    String shortWords();

    /** Whether the mean figures at both ends of the variable say as much. */
    default boolean isToldByEnds() {
        return false;
    }

    /** A way that needs no more than its name. */
    enum Plain implements Way {
        /** Values have neither size nor mean figures. */
        NOT_IN_ORDER("not put in order"),
        /** Nothing tells the variable apart from one without influence. */
        NOT_TOLD_APART("not told apart from none"),
        /** The same of a variable whose values are choices. */
        VALUES_NOT_TOLD_APART("values not told apart"),
        /** The total Sobol index alone tells it apart. */
        NEITHER_RISING_NOR_FALLING("counts, but not by rising or falling"),
        /** The same of a variable whose values are choices. */
        NOT_BY_MEANS("counts, but not by the means of its values"),
        /** Means of groups along it differ, its ends do not: the figure rises and falls again, or the reverse. */
        WITHIN_ITS_RANGE("does not go one way: differs within its range, not between its ends", "does not go one way");

        private final String words;
        private final String shortWords;

        Plain(String words) {
            this(words, words);
        }

        Plain(String words, String shortWords) {
            this.words = words;
            this.shortWords = shortWords;
        }

        @Override
        public String words() {
            return words;
        }

        @Override
        public String shortWords() {
            return shortWords;
        }
    }

    /** Means of the lowest and highest tenth and ranks say the same. */
    record Trend(Direction direction) implements Way {
        @Override
        public String words() {
            return direction.verb() + " with it";
        }

        @Override
        public String shortWords() {
            return words();
        }

        @Override
        public boolean isToldByEnds() {
            return true;
        }
    }

    /** Ranks have a direction, means of the tenths are not told apart. */
    record ByRanks(Direction direction) implements Way {
        @Override
        public String words() {
            return direction.verb() + " with it by ranks; the bar is not told apart from none";
        }

        @Override
        public String shortWords() {
            return direction.verb() + " by ranks, bar not told apart";
        }
    }

    /** Means of the tenths differ, ranks have no direction. */
    record ByEnds(Direction direction) implements Way {
        @Override
        public String words() {
            return inItsHighestTenth(direction) + "by ranks not told apart from none";
        }

        @Override
        public String shortWords() {
            return direction.comparative() + " where it is high, no trend by ranks";
        }
    }

    /** Means of the tenths differ one way, ranks go the other. */
    record Contrary(Direction ends, Direction ranks) implements Way {
        @Override
        public String words() {
            return inItsHighestTenth(ends) + "yet " + ranks.verb() + " with it by ranks: it does not go one way";
        }

        @Override
        public String shortWords() {
            return "does not go one way";
        }
    }

    /** Means of choices differ. */
    record BetweenValues(String least, String greatest) implements Way {
        @Override
        public String words() {
            return "least with " + least + ", greatest with " + greatest;
        }

        @Override
        public String shortWords() {
            return "between its values";
        }

        @Override
        public boolean isToldByEnds() {
            return true;
        }
    }

    /**
     * It goes along with variables that it is correlated with, and is not told apart once they are held.
     *
     * @param with their names
     */
    record GoingAlong(String with) implements Way {
        @Override
        public String words() {
            return "goes along with " + with + ", not told apart on its own";
        }

        @Override
        public String shortWords() {
            return "not told apart on its own";
        }
    }

    /**
     * A way of a variable that is correlated with others.
     *
     * @param whole the way with nothing held
     * @param with names of the others
     * @param alone the direction with the others held; nothing if that has no trend
     */
    record Correlated(Way whole, String with, Optional<Direction> alone) implements Way {
        @Override
        public String words() {
            return whole.words() + "; correlated with " + with + ", by itself "
                    + alone.map(direction -> "it " + direction.verb()).orElse("without a trend");
        }

        @Override
        public String shortWords() {
            return whole.shortWords();
        }
    }

    private static String inItsHighestTenth(Direction direction) {
        return direction.comparative() + " in its highest tenth than in its lowest, ";
    }
}
