package org.headfall.scenarios.run;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.headfall.scenarios.accounts.AccountPlan;
import org.headfall.scenarios.accounts.Meter;
import org.headfall.scenarios.scenario.AccountsSpecification;
import org.headfall.scenarios.scenario.BoreSpecification;
import org.headfall.scenarios.scenario.Period;
import org.headfall.scenarios.scenario.Scenario;

/** Makes the accounts of a scenario ready to be added up. */
final class AccountPlanner {

    private AccountPlanner() {}

    static AccountPlan plan(AccountsSpecification accounts, Scenario scenario) {
        return new AccountPlan(
                accounts.waterYearBegins(),
                scenario.bores().stream()
                        .map(bore -> account(bore, accounts, scenario.period()))
                        .toList());
    }

    private static AccountPlan.BoreAccount account(
            BoreSpecification bore, AccountsSpecification accounts, Period period) {
        OptionalDouble rate = bore.licence().entitlement();
        List<AccountsSpecification.MeterReading> readings = accounts.readings().stream()
                .filter(reading -> reading.bore().equals(bore.name()))
                .toList();
        Optional<Meter> meter = readings.isEmpty()
                ? Optional.empty()
                : Optional.of(new Meter(
                        readings.stream()
                                .mapToDouble(reading -> period.day(reading.date()))
                                .toArray(),
                        readings.stream()
                                .mapToDouble(AccountsSpecification.MeterReading::volume)
                                .toArray()));
        return new AccountPlan.BoreAccount(
                bore.name(),
                bore.holder(),
                bore.licence().zone(),
                rate.isPresent() ? OptionalDouble.of(rate.getAsDouble() * Period.DAYS_PER_YEAR) : rate,
                meter);
    }
}
