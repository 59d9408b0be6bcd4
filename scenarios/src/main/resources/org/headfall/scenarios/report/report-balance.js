// The water balance over time: what comes in above, what goes out below.

function drawBalance() {
  const balance = report.balance;
  if (!balance || balance.until.length === 0) return;
  const parts = balance.terms.map((term, i) => ({ label: term.words, values: term.rates.map(inFlowUnit), colour: ink(LINE_COLOURS[i % LINE_COLOURS.length] + "-area") }));
  const words = v => numberWords(v, flowDecimals()) + " " + flowUnit(), { columns, lines } = stacked(parts, words);
  const chart = putChart("balance-chart", chartOptions(byId("balance-chart"), 340, "Into the aquifer (above zero) and out of it (below)", flowUnit(), lines),
    [balance.until.map(day => START + day * DAY), ...columns]);
  return chart;
}

function prepareBalance() {
  prepareZoom(byId("balance-zoom"), ["balance-chart"]);
  unitListeners.push(drawBalance);
  drawBalance();
}
