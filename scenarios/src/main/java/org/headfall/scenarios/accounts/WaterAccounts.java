package org.headfall.scenarios.accounts;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.headfall.scenarios.accounts.AccountPlan.BoreAccount;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.recording.TakenVolumes;
import org.headfall.scenarios.recording.WaterYear;

/** Adds up what bores took in each water year. */
public final class WaterAccounts {

    private final AccountPlan plan;
    private final RunCalendar calendar;
    private final TakenVolumes volumes;

    /**
     * Accounts of a run.
     *
     * @param plan what is accounted for; its bores are those of the run, in the same order
     * @param calendar calendar of the run
     * @param volumes what its bores took
     */
    public WaterAccounts(AccountPlan plan, RunCalendar calendar, TakenVolumes volumes) {
        this.plan = plan;
        this.calendar = calendar;
        this.volumes = volumes;
    }

    /** Accounts year by year: bores, holders, zones, all bores; without those of which neither run nor meter says anything. */
    public List<WaterAccount> all() {
        List<WaterAccount> accounts = new ArrayList<>();
        double first = Math.min(volumes.startDay(), readings().min().orElse(volumes.startDay()));
        double last = Math.max(volumes.endDay(), readings().max().orElse(volumes.endDay()));
        for (WaterYear year : WaterYear.within(calendar, plan.waterYearBegins(), first, last)) {
            addYear(year, accounts);
        }
        accounts.removeIf(
                account -> account.taken().isEmpty() && account.metered().isEmpty());
        return accounts;
    }

    private DoubleStream readings() {
        return plan.bores().stream()
                .flatMap(bore -> bore.meter().stream())
                .flatMapToDouble(meter -> DoubleStream.of(meter.days()));
    }

    private void addYear(WaterYear year, List<WaterAccount> accounts) {
        for (int i = 0; i < plan.bores().size(); i++) {
            accounts.add(account(year, WaterAccount.Of.BORE, plan.bores().get(i).name(), List.of(i)));
        }
        groups(BoreAccount::holder)
                .forEach((name, bores) -> accounts.add(account(year, WaterAccount.Of.HOLDER, name, bores)));
        groups(BoreAccount::zone)
                .forEach((name, bores) -> accounts.add(account(year, WaterAccount.Of.ZONE, name, bores)));
        List<Integer> all = IntStream.range(0, plan.bores().size()).boxed().toList();
        accounts.add(account(year, WaterAccount.Of.ALL, "", all));
    }

    /** Bores by a name that they have in common, in the order of the bores; those without one belong to no group. */
    private Map<String, List<Integer>> groups(Function<BoreAccount, String> name) {
        Map<String, List<Integer>> groups = new LinkedHashMap<>();
        for (int i = 0; i < plan.bores().size(); i++) {
            String group = name.apply(plan.bores().get(i));
            if (!group.isEmpty()) {
                groups.computeIfAbsent(group, one -> new ArrayList<>()).add(i);
            }
        }
        return groups;
    }

    private WaterAccount account(WaterYear year, WaterAccount.Of of, String name, List<Integer> bores) {
        return new WaterAccount(
                year, of, name, bores.stream().map(bore -> boreYear(year, bore)).toList());
    }

    private BoreYear boreYear(WaterYear year, int place) {
        boolean inRun = year.toDay() > volumes.startDay() && year.fromDay() < volumes.endDay();
        BoreAccount bore = plan.bores().get(place);
        return new BoreYear(
                inRun
                        ? OptionalDouble.of(volumes.between(place, year.fromDay(), year.toDay()))
                        : OptionalDouble.empty(),
                year.isWholeIn(volumes.startDay(), volumes.endDay()),
                bore.meter().isPresent(),
                bore.meter().isPresent()
                        ? bore.meter().get().between(year.fromDay(), year.toDay())
                        : OptionalDouble.empty(),
                bore.entitlement());
    }
}
