package org.headfall.solver.nearfield;

import java.util.ArrayList;
import java.util.List;
import org.headfall.solver.aquifer.Side;
import org.jspecify.annotations.Nullable;

/**
 * Drawdown around a line sink of unit discharge beside straight sides: its own logarithm and those of its images
 * (Ferris and others 1962, image-well theory), taken alike behind a closed side, with the other sign behind one of fixed head.
 */
final class MirroredDrawdown {
    /** Reflections between two sides that face each other; each is one strip farther off. */
    private static final int REFLECTIONS = 6;

    private record Image(LogarithmicDrawdown drawdown, double sign) {}

    private record Reflection(double position, double sign) {}

    private final LogarithmicDrawdown own;
    private final List<Image> images = new ArrayList<>();

    /** Drawdown of a place, and its images behind some sides. */
    MirroredDrawdown(LogarithmicDrawdown own, MirrorSides sides) {
        this.own = own;
        List<Reflection> alongX = reflections(
                own.easting(), sides.mirrors().get(Side.WEST), sides.mirrors().get(Side.EAST));
        List<Reflection> alongY = reflections(
                own.northing(), sides.mirrors().get(Side.SOUTH), sides.mirrors().get(Side.NORTH));
        for (int i = 0; i < alongX.size(); i++) {
            for (int j = 0; j < alongY.size(); j++) {
                // The first of both is the place itself.
                if (i > 0 || j > 0) {
                    Reflection x = alongX.get(i);
                    Reflection y = alongY.get(j);
                    images.add(new Image(own.at(x.position(), y.position()), x.sign() * y.sign()));
                }
            }
        }
    }

    /** The place itself first, then its reflections. */
    private static List<Reflection> reflections(
            double position, MirrorSides.@Nullable Mirror lower, MirrorSides.@Nullable Mirror upper) {
        List<Reflection> reflections = new ArrayList<>();
        reflections.add(new Reflection(position, 1));
        reflect(position, lower, upper, reflections);
        reflect(position, upper, lower, reflections);
        return reflections;
    }

    /** Reflections at one side, at the other, at the first again. */
    private static void reflect(
            double position,
            MirrorSides.@Nullable Mirror first,
            MirrorSides.@Nullable Mirror second,
            List<Reflection> reflections) {
        double at = position;
        double sign = 1;
        MirrorSides.Mirror mirror = first;
        for (int k = 0; k < REFLECTIONS && mirror != null; k++) {
            at = 2 * mirror.position() - at;
            sign = mirror.held() ? -sign : sign;
            reflections.add(new Reflection(at, sign));
            mirror = k % 2 == 0 ? second : first;
        }
    }

    /** Drawdown of the place without its images. */
    LogarithmicDrawdown own() {
        return own;
    }

    /**
     * Drawdown per discharge by the images alone.
     *
     * @param x easting (m)
     * @param y northing (m)
     * @param nearest stretched distance below which none is nearer (m)
     */
    double byImages(double x, double y, double nearest) {
        double sum = 0;
        for (Image image : images) {
            LogarithmicDrawdown drawdown = image.drawdown;
            double distance = Math.hypot(drawdown.stretchedX(x), drawdown.stretchedY(y));
            sum += image.sign * drawdown.at(Math.max(distance, nearest));
        }
        return sum;
    }

    /** What images add to the values on the cells. */
    interface OnCell {
        /** Value in a cell of a drawdown whose sink lies in another. */
        double of(LogarithmicDrawdown drawdown);
    }

    /** Sum over the images, with their signs. */
    double sumOfImages(OnCell value) {
        double sum = 0;
        for (Image image : images) {
            sum += image.sign * value.of(image.drawdown);
        }
        return sum;
    }

    /** Flow of drawdown to the east through a face, per discharge. */
    double throughEast(double x, double south, double north) {
        double sum = throughEast(own, x, south, north);
        for (Image image : images) {
            sum += image.sign * throughEast(image.drawdown, x, south, north);
        }
        return sum;
    }

    private static double throughEast(LogarithmicDrawdown drawdown, double x, double south, double north) {
        return LogarithmicDrawdown.shareThrough(
                drawdown.stretchedX(x), drawdown.stretchedY(south), drawdown.stretchedY(north));
    }

    /** Flow of drawdown to the north through a face, per discharge. */
    double throughNorth(double y, double west, double east) {
        double sum = throughNorth(own, y, west, east);
        for (Image image : images) {
            sum += image.sign * throughNorth(image.drawdown, y, west, east);
        }
        return sum;
    }

    private static double throughNorth(LogarithmicDrawdown drawdown, double y, double west, double east) {
        return LogarithmicDrawdown.shareThrough(
                drawdown.stretchedY(y), drawdown.stretchedX(west), drawdown.stretchedX(east));
    }
}
