// Responses of heads to discharges. A unit discharge that began a lag ago has lowered head by R(lag), and one that has grown
// evenly since then by P(lag), the integral of R. R is straight over the logarithm of the lag between its tabled lags.

const responses = { causes: 0, stations: 0, curves: null, integrals: null, begin: null, end: null, pieces: null };

async function loadResponses() {
  const data = report.whatIf;
  if (!data) return;
  responses.causes = data.takers.length;
  responses.stations = data.stations.length;
  responses.days = series.get(data.stations[0]).days;
  responses.pieces = data.days;
  responses.step = Math.log(data.lastLag / data.firstLag) / (data.lags - 1);
  responses.first = data.firstLag;
  responses.lags = Float64Array.from({ length: data.lags }, (_, i) => data.firstLag * Math.exp(i * responses.step));
  const curves = responses.causes * responses.stations, pieces = data.days.length - 1;
  responses.curves = (await unpackTables(data.responses, data.responseQuantum, data.lags, curves * data.lags))[0];
  responses.begin = (await unpackTables(data.begin, data.dischargeQuantum, pieces, responses.causes * pieces))[0];
  responses.end = (await unpackTables(data.end, data.dischargeQuantum, pieces, responses.causes * pieces))[0];
  responses.integrals = integrals(curves);
}

/** Integrals of all curves up to each lag. */
function integrals(curves) {
  const { lags, step, curves: values } = responses, n = lags.length, sums = new Float64Array(curves * n);
  for (let c = 0; c < curves; c++) {
    let sum = lags[0] * values[c * n];
    sums[c * n] = sum;
    for (let i = 1; i < n; i++) {
      const a = values[c * n + i - 1], slope = (values[c * n + i] - a) / step;
      sum += a * (lags[i] - lags[i - 1]) + slope * (lags[i] * step - lags[i] + lags[i - 1]);
      sums[c * n + i] = sum;
    }
  }
  return sums;
}

/** Where a lag stands in the table, and the weights of R and P there: `[i, share, since, bent]`. */
function weights(lag) {
  const { first, step, lags } = responses;
  if (lag <= first) return [0, 0, lag - first, 0];
  const log = Math.log(lag / first), i = Math.min(lags.length - 2, Math.floor(log / step)), within = log - i * step;
  return [i, within / step, lag - lags[i], (lag * within - lag + lags[i]) / step];
}

/** R and P of a curve at a lag. */
function responseAt(curve, lag) {
  if (lag <= 0) return [0, 0];
  const n = responses.lags.length, [i, share, since, bent] = weights(lag), at = curve * n + i;
  const a = responses.curves[at], rise = responses.curves[at + 1] - a;
  return [a + share * rise, responses.integrals[at] + a * since + rise * bent];
}

/**
 * Drawdown at all stations on given days by a discharge of one cause, straight between the times at which it changes.
 *
 * @param {number} cause place of the cause
 * @param {{day: number, jump: number, bend: number}[]} changes jumps (m³/d) and bends (m³/d²) of the discharge
 * @param {number[]} days days of the answer
 * @return {Float64Array} drawdown (m), one row of days a station
 */
function drawdownBy(cause, changes, days) {
  const { stations, curves, integrals: sums } = responses, n = responses.lags.length, count = days.length;
  const drawdown = new Float64Array(stations * count);
  const moving = changes.filter(change => Math.abs(change.jump) > 1e-9 || Math.abs(change.bend) > 1e-12);
  for (let d = 0; d < count; d++) {
    for (const { day, jump, bend } of moving) {
      const lag = days[d] - day;
      if (lag <= 0) break;
      const [i, share, since, bent] = weights(lag), one = jump * (1 - share) + bend * (since - bent), other = jump * share + bend * bent;
      for (let s = 0, at = cause * stations * n + i; s < stations; s++, at += n) {
        drawdown[s * count + d] += one * curves[at] + other * curves[at + 1] + bend * sums[at];
      }
    }
  }
  return drawdown;
}

/** Changes of the discharge that a cause had in the run, from a day on: before it, nothing counts. */
function changesOf(cause, fromDay) {
  const pieces = responses.pieces, count = pieces.length - 1, changes = [];
  let former = 0, growth = 0;
  for (let k = 0; k < count; k++) {
    if (pieces[k + 1] <= fromDay) continue;
    const b = responses.begin[cause * count + k], e = responses.end[cause * count + k], slope = (e - b) / (pieces[k + 1] - pieces[k]);
    const start = Math.max(pieces[k], fromDay), value = b + slope * (start - pieces[k]);
    changes.push({ day: start, jump: value - former, bend: slope - growth });
    former = e; growth = slope;
  }
  return changes;
}

/** Mean discharge of a cause from a day on (m³/d). */
function meanRate(cause, fromDay) {
  const pieces = responses.pieces, count = pieces.length - 1;
  let volume = 0;
  for (let k = 0; k < count; k++) {
    const start = Math.max(pieces[k], fromDay), long = pieces[k + 1] - pieces[k];
    if (pieces[k + 1] <= start) continue;
    const b = responses.begin[cause * count + k], e = responses.end[cause * count + k], at = b + (e - b) * (start - pieces[k]) / long;
    volume += (at + e) / 2 * (pieces[k + 1] - start);
  }
  return volume / Math.max(1e-9, pieces[count] - fromDay);
}

/** Drawdown at all stations on the recorded days by all that a cause discharged from a day on; kept, for it costs time. */
function drawdownOf(cause, fromDay) {
  drawdownOf.kept = drawdownOf.kept || new Map();
  const name = cause + " " + fromDay;
  if (!drawdownOf.kept.has(name)) drawdownOf.kept.set(name, drawdownBy(cause, changesOf(cause, fromDay), responses.days));
  return drawdownOf.kept.get(name);
}

/** Drawdown since the start at all stations on the recorded days by what a cause gives more or less than at the start. */
function shareOf(cause) {
  shareOf.kept = shareOf.kept || new Map();
  if (!shareOf.kept.has(cause)) {
    const record = series.get(report.whatIf.stations[cause]), before = record && record.flow ? record.flow[0] : 0;
    const changes = changesOf(cause, 0);
    if (changes.length) changes[0] = { ...changes[0], jump: changes[0].jump - before };
    shareOf.kept.set(cause, drawdownBy(cause, changes, responses.days));
  }
  return shareOf.kept.get(cause);
}

/** The same at one date of the map, a value a station. */
function effectsOf(cause, date) {
  const all = shareOf(cause), count = responses.days.length, [i, share] = locate(responses.days, dayOfIso(field.dates[date]));
  return Array.from({ length: responses.stations }, (_, s) => {
    const at = s * count + i;
    return all[at] + (share ? share * (all[at + 1] - all[at]) : 0);
  });
}
