// Colours. Heads: viridis (van der Walt and Smith 2015). Differences: a scale with its middle at zero.

const VIRIDIS = ["#440154", "#482878", "#3e4a89", "#31688e", "#26828e", "#1f9e89", "#35b779", "#6ece58", "#b5de2b", "#fde725"];
const BELOW_ZERO = ["#e9eef2", "#b9d3e2", "#83b3d0", "#4b8fb8", "#24699a", "#0d4474"];
const ABOVE_ZERO = ["#f3ece2", "#eccfa6", "#e0ab6b", "#cb8240", "#a8591f", "#743609"];

function mix(stops, share) {
  const at = Math.max(0, Math.min(1, share)) * (stops.length - 1), i = Math.min(stops.length - 2, Math.floor(at)), f = at - i;
  const part = (hex, k) => parseInt(hex.slice(1 + 2 * k, 3 + 2 * k), 16);
  return [0, 1, 2].map(k => Math.round(part(stops[i], k) * (1 - f) + part(stops[i + 1], k) * f));
}

const QUANTITIES = {
  drawdown: { words: "Drawdown", meaning: "fall of head", values: date => field.drawdowns[date], middle: "drop" },
  head: { words: "Head", meaning: "head above datum", values: date => field.heads[date], middle: null },
  above: { words: "Head above ground", meaning: "height to which water rises above ground",
    values: date => less(field.heads[date], field.ground), needs: "ground", middle: "rise" },
  margin: { words: "Confined margin", meaning: "head above the top of the aquifer",
    values: date => less(field.heads[date], field.top), needs: "top", middle: "rise" },
};

const less = (a, b) => a.map((value, i) => value - b[i]);

/** Class limits that stay the same for every date: round numbers over the range of the quantity. */
function classLimits(key) {
  let low = Infinity, high = -Infinity;
  for (let date = 0; date < field.dates.length; date++) {
    for (const value of QUANTITIES[key].values(date)) {
      if (value < low) low = value;
      if (value > high) high = value;
    }
  }
  if (!QUANTITIES[key].middle) return d3.ticks(low, high, 11);
  if (key !== "drawdown") {
    const limits = d3.ticks(low, high, 10);
    return limits.includes(0) || low > 0 || high < 0 ? limits : limits.concat(0).sort((a, b) => a - b);
  }
  const steps = [0.05, 0.1, 0.2, 0.3, 0.5, 0.7, 1, 1.5, 2, 3, 5, 7, 10, 15, 20, 25, 30, 40, 50, 60, 80, 100, 150, 200];
  const reach = steps.filter(step => step < high).slice(-9), rise = steps.filter(step => step < -low).slice(-5);
  if (!reach.length && !rise.length) return [0];
  return rise.reverse().map(step => -step).concat(reach);
}

/** Colour of each class: between, below and above the limits. */
function classColours(key, limits) {
  const count = limits.length + 1;
  if (!QUANTITIES[key].middle) return Array.from({ length: count }, (_, i) => mix(VIRIDIS, i / Math.max(1, count - 1)));
  const positiveIsBad = QUANTITIES[key].middle === "drop";
  const middle = i => (i === 0 ? limits[0] - 1e-9 : i === limits.length ? limits[i - 1] + 1e-9 : (limits[i - 1] + limits[i]) / 2);
  const positives = Array.from({ length: count }, (_, i) => i).filter(i => middle(i) > 0).length, negatives = count - positives;
  return Array.from({ length: count }, (_, i) => {
    const up = middle(i) > 0;
    const share = up ? (i - negatives + 1) / positives : (negatives - i) / negatives;
    if (key === "drawdown" && i > 0 && i < limits.length && limits[i - 1] <= 0 && limits[i] >= 0) return [250, 249, 245];
    return mix(up === positiveIsBad ? ABOVE_ZERO : BELOW_ZERO, share);
  });
}

/** Colour named in the style sheet, as it is in the present scheme. */
const ink = name => getComputedStyle(document.documentElement).getPropertyValue("--" + name).trim();
