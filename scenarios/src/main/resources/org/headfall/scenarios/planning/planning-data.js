// The figures of the page, and words for numbers.

const plan = JSON.parse(document.getElementById("data").textContent);
const byId = id => document.getElementById(id);
const isPrinted = () => matchMedia("print").matches;

/** A number with fixed decimals and thousands set apart; a dash if it is not known. */
function words(value, decimals) {
  if (value === null || value === undefined || !Number.isFinite(value)) return "\u2013";
  const [whole, rest] = Math.abs(value).toFixed(decimals).split(".");
  return (value < 0 ? "\u2212" : "") + whole.replace(/\B(?=(\d{3})+$)/g, "\u202f") + (rest ? "." + rest : "");
}

/** The next larger of 1, 2, 2.5, 5 times a power of ten. */
function roundStep(size) {
  const power = 10 ** Math.floor(Math.log10(Math.max(1e-6, size)));
  return [1, 2, 2.5, 5, 10].map(n => n * power).find(step => step >= size * (1 - 1e-9));
}

function choice(select, names) {
  for (const [value, text] of names) {
    const option = document.createElement("option");
    option.value = value; option.textContent = text;
    select.append(option);
  }
}
