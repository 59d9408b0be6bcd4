// Colours. Heads: viridis (van der Walt and Smith 2015). Differences: a scale with its middle at zero.

const VIRIDIS = ["#440154", "#482878", "#3e4a89", "#31688e", "#26828e", "#1f9e89", "#35b779", "#6ece58", "#b5de2b", "#fde725"];
const BLUES = ["#e9eef2", "#b9d3e2", "#83b3d0", "#4b8fb8", "#24699a", "#0d4474"];
const OCHRES = ["#f3ece2", "#eccfa6", "#e0ab6b", "#d08a4a", "#b56d30", "#92501c"];
const NEITHER = [250, 249, 245];

function mix(stops, share) {
  const at = Math.max(0, Math.min(1, share)) * (stops.length - 1), i = Math.min(stops.length - 2, Math.floor(at)), f = at - i;
  const part = (hex, k) => parseInt(hex.slice(1 + 2 * k, 3 + 2 * k), 16);
  return [0, 1, 2].map(k => Math.round(part(stops[i], k) * (1 - f) + part(stops[i + 1], k) * f));
}

const rgb = colour => "rgb(" + colour.join(",") + ")";

/** Black or white, whichever can be read better on a colour (relative luminance, WCAG 2.2). */
function inkOn(colour) {
  const [r, g, b] = colour.map(c => c / 255).map(c => c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4);
  return 0.2126 * r + 0.7152 * g + 0.0722 * b > 0.179 ? "#000" : "#fff";
}

/** Smallest and largest value of a quantity at all dates. */
function rangeOf(key) {
  let low = Infinity, high = -Infinity;
  const at = QUANTITIES[key].at, cells = field.x.length * field.y.length;
  for (let date = 0; date < field.dates.length; date++) {
    for (let i = 0; i < cells; i++) {
      const value = at(date, i);
      if (value < low) low = value;
      if (value > high) high = value;
    }
  }
  return [low, high];
}

/** Class limits that stay the same for every date: round numbers over the range of the quantity. */
function classLimits(key) {
  const [low, high] = rangeOf(key);
  if (!QUANTITIES[key].zero) return d3.ticks(low, high, 11);
  if (key !== "drawdown") {
    const limits = d3.ticks(low, high, 10);
    return limits.includes(0) || low > 0 || high < 0 ? limits : limits.concat(0).sort((a, b) => a - b);
  }
  const step = niceStep(Math.max(high, -low) / 14), limits = [];
  for (const share of [0.1, 0.5]) limits.push(share * step, -share * step);
  for (let k = 1; k * step < Math.max(high, -low); k++) limits.push(k * step, -k * step);
  const within = limits.filter(limit => limit > low && limit < high).map(limit => +limit.toPrecision(6)).sort((a, b) => a - b);
  return within.length ? within : [0];
}

/** The next larger of 1, 2, 2.5, 5 times a power of ten. */
function niceStep(size) {
  const power = 10 ** Math.floor(Math.log10(Math.max(1e-3, size)));
  return [1, 2, 2.5, 5, 10].map(n => n * power).find(step => step >= size);
}

/** Colour of each class: below, between and above the limits. */
function classColours(key, limits) {
  const count = limits.length + 1;
  if (!QUANTITIES[key].zero) return Array.from({ length: count }, (_, i) => mix(VIRIDIS, i / Math.max(1, count - 1)));
  const positiveIsBad = QUANTITIES[key].zero === "more is worse";
  const middle = i => i === 0 ? limits[0] - 1e-9 : i === limits.length ? limits[i - 1] + 1e-9 : (limits[i - 1] + limits[i]) / 2;
  const positives = Array.from({ length: count }, (_, i) => i).filter(i => middle(i) > 0).length, negatives = count - positives;
  return Array.from({ length: count }, (_, i) => {
    if (key === "drawdown" && isAroundZero(limits, i)) return NEITHER;
    const up = middle(i) > 0;
    return mix(up === positiveIsBad ? OCHRES : BLUES, up ? (i - negatives + 1) / positives : (negatives - i) / negatives);
  });
}

/** Whether a class holds the values about zero. */
function isAroundZero(limits, i) {
  const from = i === 0 ? -Infinity : limits[i - 1], to = i === limits.length ? Infinity : limits[i];
  return from < 0 && to > 0;
}

/** Colour named in the style sheet, as it is in the present scheme. */
const ink = name => getComputedStyle(document.documentElement).getPropertyValue("--" + name).trim();

/** Colours and dashes that tell lines apart, by both. */
const LINE_COLOURS = ["line-1", "line-2", "line-3", "line-4", "line-5", "line-6", "line-7"];
const LINE_DASHES = [[], [8, 4], [2, 3], [10, 4, 2, 4], [5, 3], [14, 5], [1, 4]];
