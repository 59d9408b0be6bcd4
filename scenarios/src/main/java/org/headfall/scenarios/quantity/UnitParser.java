package org.headfall.scenarios.quantity;

import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.jspecify.annotations.Nullable;

/**
 * Reads a product of units: {@code m3/d}, {@code m3 d-1}, {@code m^3.d^-1}, {@code m³ d⁻¹}, {@code 1/m}.
 *
 * <p>A stroke divides by the one unit after it; a product after a stroke ({@code L/s.m}) is refused because people read
 * it in two ways.
 */
final class UnitParser {
    private static final String SUPERSCRIPTS = "⁰¹²³⁴⁵⁶⁷⁸⁹";
    private static final int HIGHEST_POWER = 9;
    private static final int LONGEST = 40;

    private final String typed;
    private final String text;
    private int position;

    UnitParser(String typed) {
        this.typed = typed;
        this.text = plain(typed);
    }

    private static String plain(String typed) {
        StringBuilder plain = new StringBuilder();
        for (char letter : typed.strip().replace("°C", "degC").toCharArray()) {
            int digit = SUPERSCRIPTS.indexOf(letter);
            if (digit >= 0) {
                plain.append(digit);
            } else if (letter == '⁻' || letter == '−') {
                plain.append('-');
            } else if (letter == '·' || letter == '⋅' || letter == '*') {
                plain.append('.');
            } else {
                plain.append(letter);
            }
        }
        return plain.toString();
    }

    Unit parse() throws QuantityException {
        if (text.length() > LONGEST) {
            throw malformed();
        }
        Unit product = Unit.ONE;
        boolean first = true;
        boolean divided = false;
        while (position < text.length()) {
            boolean divide = !first && separatorDivides();
            if (divided && !divide) {
                throw new QuantityException(Finding.of(
                        ProblemKind.UNKNOWN_UNIT, typed, "one stroke for each unit below the line, as in L/s/m"));
            }
            product = factor(product, divide);
            divided |= divide;
            first = false;
        }
        return new Unit(typed, product.exponents(), product.factor());
    }

    private boolean separatorDivides() throws QuantityException {
        int start = position;
        skipSpaces();
        char separator = peek();
        if (separator == '/' || separator == '.') {
            position++;
            skipSpaces();
            return separator == '/';
        }
        if (position == start) {
            throw malformed();
        }
        return false;
    }

    private Unit factor(Unit product, boolean divide) throws QuantityException {
        if (peek() == '1') {
            position++;
            return product;
        }
        String symbol = symbol();
        @Nullable Unit unit = UnitTable.find(symbol);
        if (unit == null) {
            throw new QuantityException(UnitTable.unknown(typed, symbol));
        }
        int power = power();
        return product.times(unit, divide ? -power : power);
    }

    private String symbol() throws QuantityException {
        int start = position;
        while (Character.isLetter(peek()) || peek() == '%' || peek() == '°') {
            position++;
        }
        if (position == start) {
            throw malformed();
        }
        return text.substring(start, position);
    }

    private int power() throws QuantityException {
        boolean marked = peek() == '^';
        if (marked) {
            position++;
        }
        boolean negative = peek() == '-';
        if (negative) {
            position++;
        }
        int digit = peek() - '0';
        if (digit < 1 || digit > HIGHEST_POWER) {
            if (marked || negative) {
                throw malformed();
            }
            return 1;
        }
        position++;
        return negative ? -digit : digit;
    }

    private void skipSpaces() {
        while (Character.isWhitespace(peek())) {
            position++;
        }
    }

    private char peek() {
        return position < text.length() ? text.charAt(position) : '\0';
    }

    private QuantityException malformed() {
        return new QuantityException(
                Finding.of(ProblemKind.UNKNOWN_UNIT, typed, "a unit such as m, L/s, m2/d, 1/m, m3 d-1 or s2/m5"));
    }
}
