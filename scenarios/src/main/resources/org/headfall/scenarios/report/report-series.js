// Series of the sites over time, unpacked, and the values of the what-if beside them.

const series = new Map();

async function loadSeries() {
  for (const entry of report.hydrographs) {
    const length = entry.days.length;
    const row = (name, quantum) => unpackRow(entry[name], quantum, length);
    series.set(entry.site, { days: entry.days, head: await row("aquiferHead", entry.quantum),
      level: await row("waterLevel", entry.quantum), flow: await row("flow", entry.flowQuantum),
      references: entry.references, measured: entry.measured });
  }
}

/** Value of a series on a day, straight between its days; NaN if it was not recorded. */
function seriesAt(days, values, day) {
  if (!values) return NaN;
  const [i, share] = locate(days, day);
  return share === 0 || days.length < 2 ? values[i] : values[i] + share * (values[i + 1] - values[i]);
}

/** Days of the dates of the map. */
const mapDays = () => field.dates.map(dayOfIso);
