package org.headfall.solver.analytic;

import static org.headfall.solver.analytic.function.ReferenceTable.assertRelative;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;

/** Papadopulos (1965). */
class AnisotropicTheisSolutionTest {
    @Test
    void isTheisWhereDirectionDoesNotMatter() {
        var theis = new TheisSolution(200, 3e-4);
        var same = AnisotropicTheisSolution.alongAxes(200, 200, 3e-4);
        assertRelative(theis.drawdown(900, 50, 2), same.drawdown(900, 30, 40, 2), 1e-13, "field");
        assertRelative(theis.drawdown(900, 0.2, 2), same.drawdownInBore(900, 0.2, 2), 1e-13, "bore");
    }

    /** Turning the aquifer and the point together changes nothing. */
    @Test
    void doesNotDependOnTheAxesOfThePlan() {
        double major = 500;
        double minor = 50;
        var aligned = AnisotropicTheisSolution.alongAxes(major, minor, 3e-4);
        for (double angle = 0; angle < Math.PI; angle += 0.3) {
            double c = Math.cos(angle);
            double s = Math.sin(angle);
            var turned = new AnisotropicTheisSolution(
                    major * c * c + minor * s * s, major * s * s + minor * c * c, (major - minor) * s * c, 3e-4);
            double expected = aligned.drawdown(900, 70, 20, 1);
            assertRelative(expected, turned.drawdown(900, 70 * c - 20 * s, 70 * s + 20 * c, 1), 1e-12, angle);
            assertRelative(aligned.drawdownInBore(900, 0.2, 1), turned.drawdownInBore(900, 0.2, 1), 1e-12, angle);
        }
        assertFalse(new AnisotropicTheisSolution(100, 100, 10, 1e-4).mirrorSymmetric());
    }

    /** Residual of {@code S ds/dt = Tx d²s/dx² + Ty d²s/dy² + 2 Txy d²s/dxdy} by central differences. */
    @Test
    void satisfiesTheFlowEquation() {
        var field = new AnisotropicTheisSolution(300, 80, 60, 3e-4);
        double x = 90;
        double y = -40;
        double t = 0.05;
        double h = 0.5;
        double k = 1e-4;
        double centre = field.drawdown(900, x, y, t);
        double rise = (field.drawdown(900, x, y, t + k) - field.drawdown(900, x, y, t - k)) / (2 * k);
        double xx = (field.drawdown(900, x + h, y, t) - 2 * centre + field.drawdown(900, x - h, y, t)) / (h * h);
        double yy = (field.drawdown(900, x, y + h, t) - 2 * centre + field.drawdown(900, x, y - h, t)) / (h * h);
        double xy = (field.drawdown(900, x + h, y + h, t)
                        - field.drawdown(900, x + h, y - h, t)
                        - field.drawdown(900, x - h, y + h, t)
                        + field.drawdown(900, x - h, y - h, t))
                / (4 * h * h);
        assertRelative(3e-4 * rise, 300 * xx + 80 * yy + 2 * 60 * xy, 1e-3, "balance");
    }

    /** The level of a pumped bore is uniform round its wall, so it is the drawdown averaged over the equivalent ellipse. */
    @Test
    void drawdownInTheBoreIsTheLineSourceAtTheMeanRadius() {
        double ratio = 16;
        var field = AnisotropicTheisSolution.alongAxes(400, 400 / ratio, 3e-4);
        double stretch = Math.pow(ratio, 0.25);
        double meanRadius = 0.2 * (stretch + 1 / stretch) / 2;
        var isotropic = new TheisSolution(100, 3e-4);
        assertRelative(isotropic.drawdown(900, meanRadius, 1), field.drawdownInBore(900, 0.2, 1), 1e-12, "bore");
    }

    @Test
    void refusesATensorThatIsNotPositive() {
        assertThrows(IllegalArgumentException.class, () -> new AnisotropicTheisSolution(100, 100, 100, 1e-4));
        var field = AnisotropicTheisSolution.alongAxes(100, 100, 1e-4);
        assertThrows(IllegalArgumentException.class, () -> field.drawdown(1, 0, 0, 1));
        assertEquals(0, field.drawdown(1, 1, 0, 0));
    }
}
