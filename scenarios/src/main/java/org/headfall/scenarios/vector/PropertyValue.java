package org.headfall.scenarios.vector;

/** The value of a property of a feature. */
public sealed interface PropertyValue {
    /** Where the file gives it. */
    TextPosition position();

    /** What to print of it in a message. */
    String shown();

    /**
     * A text.
     *
     * @param value the text
     * @param position where the file gives it
     */
    record TextValue(String value, TextPosition position) implements PropertyValue {
        @Override
        public String shown() {
            return "\"" + value + "\"";
        }
    }

    /**
     * A number.
     *
     * @param value the number, finite
     * @param position where the file gives it
     */
    record NumberValue(double value, TextPosition position) implements PropertyValue {
        /** Checks the number. */
        public NumberValue {
            if (!Double.isFinite(value)) {
                throw new IllegalArgumentException("GeoJSON has no number " + value);
            }
        }

        @Override
        public String shown() {
            return Double.toString(value);
        }
    }

    /**
     * True or false.
     *
     * @param value which of them
     * @param position where the file gives it
     */
    record TruthValue(boolean value, TextPosition position) implements PropertyValue {
        @Override
        public String shown() {
            return Boolean.toString(value);
        }
    }

    /**
     * Nothing, the {@code null} of JSON.
     *
     * @param position where the file gives it
     */
    record NoValue(TextPosition position) implements PropertyValue {
        @Override
        public String shown() {
            return "nothing";
        }
    }

    /**
     * A list or an object.
     *
     * @param json the value as JSON
     * @param position where the file gives it
     */
    record NestedValue(String json, TextPosition position) implements PropertyValue {
        @Override
        public String shown() {
            return json;
        }
    }

    /** A text that was not read from a file. */
    static PropertyValue of(String text) {
        return new TextValue(text, TextPosition.NONE);
    }

    /** A number that was not read from a file; finite. */
    static PropertyValue of(double number) {
        return new NumberValue(number, TextPosition.NONE);
    }

    /** A truth value that was not read from a file. */
    static PropertyValue of(boolean truth) {
        return new TruthValue(truth, TextPosition.NONE);
    }
}
