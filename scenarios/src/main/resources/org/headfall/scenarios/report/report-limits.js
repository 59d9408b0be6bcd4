// Limits at other rates than those of the run, judged as the run judges them: by values on the recorded days, straight between
// them.

/** The same date some years later, or earlier, as a day since the start. */
function yearsAfter(day, years) {
  const date = new Date((START + day * DAY) * 1000), month = date.getUTCMonth();
  date.setUTCFullYear(date.getUTCFullYear() + years);
  if (date.getUTCMonth() !== month) date.setUTCDate(0);
  return date / 1000 / DAY - START / DAY;
}

/** Mean over time of a series, straight between its days; its value if both days are one. */
function meanBetween(days, values, from, to) {
  if (to <= from) return seriesAt(days, values, from);
  const corners = [from, ...days.filter(day => day > from && day < to), to];
  let area = 0;
  for (let i = 1; i < corners.length; i++) {
    area += (seriesAt(days, values, corners[i - 1]) + seriesAt(days, values, corners[i])) / 2 * (corners[i] - corners[i - 1]);
  }
  return area / (to - from);
}

/** Values of what a limit limits, on the recorded days from the first on which there is one: `[days, values]`. */
function limitedValues(condition, changes, drawdown) {
  const days = responses.days, head = headUnder(condition.station, drawdown);
  const other = condition.causes.length ? headUnder(condition.station, superposeWithout(changes, condition.causes)) : null;
  if (condition.quantity === "FLOOR_LEVEL") return [days, head];
  if (condition.quantity === "DECLINE_RATE") return declineRates(days, other ? head.map((value, i) => value - other[i]) : head, condition.years);
  if (other) return [days, head.map((value, i) => other[i] - value)];
  const [from, to] = condition.reference, reference = meanBetween(days, head, from, to), first = days.findIndex(day => day >= to);
  return first < 0 ? [[], []] : [days.slice(first), head.slice(first).map(value => reference - value)];
}

/** Mean fall of head over some years up to each day that lies so long after the start (m/yr). */
function declineRates(days, head, years) {
  const since = yearsAfter(days[0], years), first = days.findIndex(day => day >= since);
  if (first < 0) return [[], []];
  const later = days.slice(first), values = later.map((day, i) => {
    const earlier = Math.max(days[0], yearsAfter(day, -years));
    return (seriesAt(days, head, earlier) - head[first + i]) / ((day - earlier) / 365.25);
  });
  return [later, values];
}

/** The part of a series in which a limit counts, with values on its rims where they fall between two days. */
function partOf(days, values, from, to) {
  const last = days[days.length - 1], rims = [from, to].filter(day => day > days[0] && day < last && !days.includes(day));
  const part = days.filter(day => day >= from && day <= to).concat(rims).sort((a, b) => a - b);
  return [part, part.map(day => seriesAt(days, values, day))];
}

/** Outcome of a limit in the run itself, in the form of {@link judge}: the page's own way is off by fractions of a millimetre. */
function outcomeOfRun(condition) {
  const limit = report.limits[condition.limit], day = iso => iso ? dayOfIso(iso) : null;
  return { limit, worst: limit.reached, on: day(limit.reachedOn), crossed: day(limit.crossedOn), state: limit.verdict.toLowerCase() };
}

/**
 * Outcome of a limit under changed rates.
 *
 * @return worst value, its day, the first day beyond the limit or null, and whether it holds: "holds", "crossed", or
 *     "undecided" where the margin is smaller than the numerical error or the limit counts for longer than the run lasts
 */
function judge(condition, changes, drawdown) {
  const limit = report.limits[condition.limit], sign = condition.quantity === "FLOOR_LEVEL" ? 1 : -1;
  const [days, values] = partOf(...limitedValues(condition, changes, drawdown), condition.fromDay, condition.toDay);
  const margins = Array.from(values, value => sign * (value - limit.allowed));
  const at = margins.reduce((a, margin, i) => margin < margins[a] ? i : a, 0), i = margins.findIndex(margin => margin < 0);
  const crossed = i < 0 ? null : i === 0 ? days[0]
    : days[i - 1] + margins[i - 1] / (margins[i - 1] - margins[i]) * (days[i] - days[i - 1]);
  const tooShort = crossed === null && condition.toDay > responses.days[responses.days.length - 1] + 0.01;
  const state = Math.abs(margins[at]) < (limit.error || 0) || tooShort ? "undecided" : crossed === null ? "holds" : "crossed";
  return { limit, worst: values[at], on: days[at], crossed, state };
}
