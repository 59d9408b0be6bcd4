// Heads at other rates than those of the run, by superposition on the run. Bores that follow a rate change by what the
// reader asks; springs and free-flowing bores follow head by their own law and are met anew at a number of days, their
// change of discharge being straight between them. Other rules keep the discharge of the run.

const MOST_FOLLOWED_DAYS = 220;
const FLOWING = 1e-3;

/** A change of one bore: its discharge times a factor, and a constant discharge more (m³/d), both from a day on. */
const UNCHANGED = { factor: 1, added: 0, from: 0 };

/** Drawdown at all stations by a unit discharge of a cause from a day on, on the recorded days. */
function unitDrawdown(cause, from) {
  unitDrawdown.kept = unitDrawdown.kept || new Map();
  const name = cause + " " + from;
  if (!unitDrawdown.kept.has(name)) unitDrawdown.kept.set(name, drawdownBy(cause, [{ day: from, jump: 1, bend: 0 }], responses.days));
  return unitDrawdown.kept.get(name);
}

/** Further drawdown at all stations on the recorded days by the changes that are asked for. */
function askedDrawdown(changes) {
  const sum = new Float64Array(responses.stations * responses.days.length);
  const add = (values, times) => { for (let i = 0; i < sum.length; i++) sum[i] += times * values[i]; };
  changes.forEach((change, cause) => {
    if (change.factor !== 1) add(drawdownOf(cause, change.from), change.factor - 1);
    if (change.added) add(unitDrawdown(cause, change.from), change.added);
  });
  return sum;
}

/** What follows head: its law about the state of the run, so that without a change nothing changes. */
function followers() {
  return report.whatIf.takers.map((taker, cause) => ({ taker, cause })).filter(({ taker }) => taker.rule === "HEAD")
    .map(({ taker, cause }) => ({ cause, linear: Math.max(1e-12, taker.linearLoss), quadratic: taker.quadraticLoss, outlet: taker.outlet,
      record: series.get(report.whatIf.stations[cause]) }));
}

/** Level that must be offered before a follower flows, at a recorded day; null where it is shut. */
function outletIn({ record, linear, quadratic, outlet }, place) {
  const flow = record.flow[place], head = record.head[place];
  if (flow > FLOWING) return head - linear * flow - quadratic * flow * flow;
  return head <= outlet + 0.005 ? outlet : null;
}

/** The discharge Q, not negative, for which `offered - own Q` is what the law needs: `outlet + linear Q + quadratic Q²`. */
function dischargeFor(offered, outlet, own, { linear, quadratic }) {
  const above = offered - outlet, slope = linear + own;
  if (above <= 0) return 0;
  return quadratic > 0 ? (Math.sqrt(slope * slope + 4 * quadratic * above) - slope) / (2 * quadratic) : above / slope;
}

/** Days at which what follows head is met, places among the recorded days; those before something is shut among them. */
function followedDays(all) {
  const last = responses.days.length - 1, stride = Math.max(1, Math.ceil(last / MOST_FOLLOWED_DAYS)), places = [0];
  for (let i = 1; i <= last; i++) {
    const shuts = all.some(one => i < last && outletIn(one, i) !== null && outletIn(one, i + 1) === null);
    if (i % stride === 0 || i === last || shuts) places.push(i);
  }
  return places;
}

/**
 * What follows head, the days at which it is met, and what an even growth of each discharge since each of these days does at
 * each station on each later one: found once, for it does not depend on what the reader asks.
 */
function followed() {
  if (followed.kept) return followed.kept;
  const all = followers(), places = followedDays(all), at = places.map(place => responses.days[place]), n = at.length;
  const grown = all.map(one => Array.from({ length: responses.stations }, (_, s) => {
    const values = new Float32Array(n * (n - 1) / 2), curve = one.cause * responses.stations + s;
    for (let m = 1, i = 0; m < n; m++) for (let k = 0; k < m; k++) values[i++] = responseAt(curve, at[m] - at[k])[1];
    return values;
  }));
  followed.kept = { all, places, at, grown };
  return followed.kept;
}

/** Place of the day m and an earlier day k among the values of `grown`. */
const since = (m, k) => m * (m - 1) / 2 + k;

/** Drawdown at a station on the day m by the bends and jumps of one follower up to then. */
function followedDrawdown({ all, at, grown }, f, station, m, bends, jumps) {
  const values = grown[f][station], first = since(m, 0);
  let sum = 0;
  for (let k = 0; k < m; k++) sum += bends[k] * values[first + k];
  for (const { k, jump } of jumps) if (k < m) sum += jump * responseAt(all[f].cause * responses.stations + station, at[m] - at[k])[0];
  return sum;
}

/**
 * Changes of the discharge of all followers, straight between the followed days, given the drawdown that is asked for. What
 * is shut in the run stops at once.
 *
 * @param {number[]} out causes that are asked to give nothing and so follow no head
 * @return changes (m³/d) of each follower on each followed day, and their bends (m³/d²) and jumps (m³/d)
 */
function followedChanges(table, asked, out) {
  const { all, places, at, grown } = table, count = responses.days.length, n = at.length;
  const change = all.map(() => new Float64Array(n)), bends = all.map(() => new Float64Array(n)), jumps = all.map(() => []);
  const growth = new Float64Array(all.length);
  const outletOf = (f, place) => out.includes(all[f].cause) ? null : outletIn(all[f], place);
  for (let m = 1; m < n; m++) {
    const long = at[m] - at[m - 1], from = all.map((_, f) => change[f][m - 1]);
    all.forEach((_, f) => {
      bends[f][m - 1] = -growth[f];
      if (outletOf(f, places[m]) === null && from[f] !== 0) { jumps[f].push({ k: m - 1, jump: -from[f] }); from[f] = 0; }
    });
    const coupling = all.map(one => all.map((_, g) => grown[g][one.cause][since(m, m - 1)] / long));
    const offered = all.map((one, f) => one.record.head[places[m]] - asked[one.cause * count + places[m]]
      - all.reduce((sum, _, g) => sum + followedDrawdown(table, g, one.cause, m, bends[g], jumps[g]) - coupling[f][g] * from[g], 0));
    meet(all, all.map((_, f) => outletOf(f, places[m])), places[m], coupling, offered, change, m);
    all.forEach((_, f) => {
      growth[f] = (change[f][m] - from[f]) / long;
      bends[f][m - 1] += growth[f];
    });
  }
  return { change, bends, jumps };
}

/** Meets the laws of all followers that have an outlet on one day, one after the other until nothing moves (Gauss and Seidel). */
function meet(all, outlets, place, coupling, offered, change, m) {
  all.forEach((_, f) => { change[f][m] = outlets[f] === null ? 0 : change[f][m - 1]; });
  for (let round = 0; round < 100; round++) {
    let moved = 0;
    all.forEach((one, f) => {
      if (outlets[f] === null) return;
      const others = all.reduce((sum, _, g) => g === f ? sum : sum + coupling[f][g] * change[g][m], 0), run = one.record.flow[place];
      const discharge = dischargeFor(offered[f] - others + coupling[f][f] * run, outlets[f], coupling[f][f], one);
      moved = Math.max(moved, Math.abs(discharge - run - change[f][m]));
      change[f][m] = discharge - run;
    });
    if (moved < 1e-3) return;
  }
}

/** Adds the drawdown by the followers, straight between the followed days, to what is asked for. */
function addFollowed(table, { change, bends, jumps }, drawdown) {
  const { all, places, at } = table, days = responses.days, count = days.length;
  all.forEach((_, f) => {
    if (!change[f].some(value => Math.abs(value) > 1e-6)) return;
    for (let s = 0; s < responses.stations; s++) {
      for (let m = 1, from = 0; m < places.length; m++) {
        const to = followedDrawdown(table, f, s, m, bends[f], jumps[f]);
        for (let i = places[m - 1] + 1; i <= places[m]; i++) {
          drawdown[s * count + i] += from + (to - from) * (days[i] - at[m - 1]) / (at[m] - at[m - 1]);
        }
        from = to;
      }
    }
  });
}

/**
 * Further drawdown at all stations on the recorded days.
 *
 * @param {{factor: number, added: number, from: number}[]} changes what is asked of each cause
 * @param {number[]} out causes that are asked to give nothing, also where they would follow head
 * @return {{drawdown: Float64Array}} drawdown (m), a row of days a station
 */
function superpose(changes, out = []) {
  const drawdown = askedDrawdown(changes), table = followed(), found = followedChanges(table, drawdown, out);
  addFollowed(table, found, drawdown);
  return { drawdown };
}

/** The same if some causes were never operated; kept for the last changes of the others. */
function superposeWithout(changes, causes) {
  const never = changes.map((change, i) => causes.includes(i) ? { factor: 0, added: 0, from: 0 } : change), name = JSON.stringify(never);
  superposeWithout.kept = superposeWithout.kept || new Map();
  if (!superposeWithout.kept.has(name)) {
    if (superposeWithout.kept.size > 6) superposeWithout.kept.clear();
    superposeWithout.kept.set(name, superpose(never, causes).drawdown);
  }
  return superposeWithout.kept.get(name);
}

/** Head of a station on the recorded days under some further drawdown. */
function headUnder(station, drawdown) {
  const head = series.get(report.whatIf.stations[station]).head, count = responses.days.length;
  return head.map((value, i) => value - drawdown[station * count + i]);
}
