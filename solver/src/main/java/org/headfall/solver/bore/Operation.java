package org.headfall.solver.bore;

import java.util.Optional;
import java.util.OptionalDouble;
import org.headfall.solver.schedule.Schedule;

/** How a bore is operated: what pump or valve do. */
public sealed interface Operation {

    /** Level needed in the bore for a discharge, where the discharge depends on the level. */
    Optional<NeededLevel> neededLevel();

    /** Nothing is taken: shut, capped, or not yet drilled. */
    record Off() implements Operation {
        @Override
        public Optional<NeededLevel> neededLevel() {
            return Optional.empty();
        }
    }

    /**
     * Pumped at a scheduled rate. Where a lowest water level is given the rate is cut so that the level in the bore
     * does not fall below it.
     *
     * @param rate discharge (m³/d), negative for injection
     * @param lowestLevel lowest allowed water level in the bore (m above datum), if any
     */
    record PumpedRate(Schedule rate, OptionalDouble lowestLevel) implements Operation {
        @Override
        public Optional<NeededLevel> neededLevel() {
            return lowestLevel.isPresent()
                    ? Optional.of(NeededLevel.constant(lowestLevel.getAsDouble()))
                    : Optional.empty();
        }
    }

    /**
     * Flows by itself while the bore's water stands above the outlet; never takes water in. With a casing, friction and
     * the velocity at the outlet hold it back: by Bernoulli's equation the level that the bore would have without flow is
     * {@code outlet + f L/D v²/(2 g) + v²/(2 g)}.
     *
     * @param outletLevel outlet level (m above datum)
     * @param casing what the water rises through, if its friction counts
     */
    record FreeFlow(double outletLevel, Optional<Pipe> casing) implements Operation, NeededLevel {

        /**
         * Free flow without friction.
         *
         * @param outletLevel outlet level (m above datum)
         */
        public FreeFlow(double outletLevel) {
            this(outletLevel, Optional.empty());
        }

        @Override
        public Optional<NeededLevel> neededLevel() {
            return Optional.of(this);
        }

        @Override
        public double at(double discharge) {
            return outletLevel + (casing.isPresent() ? casing.get().loss(discharge) : 0);
        }

        @Override
        public double slope(double discharge) {
            return casing.isPresent() ? casing.get().slope(discharge) : 0;
        }
    }

    /**
     * Pumped as the pump can: the head that it adds, less friction and velocity head in the riser, lifts the water from its
     * level in the bore to the delivery level. The discharge lies between none, where the lift is beyond the pump, and the
     * end of its curve; it is cut where the water would fall below the lowest level.
     *
     * @param curve head added by discharge
     * @param deliveryLevel level to which water is lifted (m above datum), pressure head at delivery included
     * @param riser what the water rises through, if its friction counts
     * @param lowestLevel lowest allowed water level in the bore (m above datum), if any
     */
    record PumpedByCurve(PumpCurve curve, double deliveryLevel, Optional<Pipe> riser, OptionalDouble lowestLevel)
            implements Operation, NeededLevel {

        @Override
        public Optional<NeededLevel> neededLevel() {
            return Optional.of(this);
        }

        @Override
        public double at(double discharge) {
            return Math.max(levelOfCurve(discharge), lowestLevel.orElse(Double.NEGATIVE_INFINITY));
        }

        @Override
        public double slope(double discharge) {
            boolean cut = lowestLevel.isPresent() && levelOfCurve(discharge) < lowestLevel.getAsDouble();
            return cut ? 0 : (riser.isPresent() ? riser.get().slope(discharge) : 0) - curve.slope(discharge);
        }

        private double levelOfCurve(double discharge) {
            return deliveryLevel + (riser.isPresent() ? riser.get().loss(discharge) : 0) - curve.head(discharge);
        }
    }
}
