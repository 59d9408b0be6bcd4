"use strict";
// Reads packed numbers. The writing side is PackedNumbers.java.

/** Bytes of a deflated text in base64. */
async function inflate(text) {
  const binary = atob(text), packed = new Uint8Array(binary.length);
  for (let i = 0; i < packed.length; i++) packed[i] = binary.charCodeAt(i);
  const stream = new Blob([packed]).stream().pipeThrough(new DecompressionStream("deflate"));
  return new Uint8Array(await new Response(stream).arrayBuffer());
}

/**
 * Tables of a packed sequence: one array of the given type a table, NaN where a value is missing.
 *
 * @param {string} text the packed tables
 * @param {number} quantum what values were rounded to
 * @param {number} rowLength values in a row
 * @param {number} tableLength values in a table
 */
async function unpackTables(text, quantum, rowLength, tableLength, Type = Float64Array) {
  const bytes = await inflate(text), tables = [];
  let before = new Float64Array(tableLength), at = 0;
  while (at < bytes.length) {
    const units = new Float64Array(tableLength), values = new Type(tableLength);
    let left = 0, rowStart = 0;
    for (let i = 0; i < tableLength; i++) {
      const first = i % rowLength === 0;
      if (first) left = rowStart;
      let code = 0, factor = 1, byte = bytes[at++];
      while (byte & 128) { code += (byte & 127) * factor; factor *= 128; byte = bytes[at++]; }
      code += byte * factor;
      if (code === 0) { units[i] = NaN; values[i] = NaN; continue; }
      const zigzag = code - 1, half = Math.floor(zigzag / 2);
      left += zigzag % 2 ? -half - 1 : half;
      if (first) rowStart = left;
      units[i] = left + (Number.isNaN(before[i]) ? 0 : before[i]);
      values[i] = units[i] * quantum;
    }
    before = units;
    tables.push(values);
  }
  return tables;
}

/** Values of one packed row, or null if there is none. */
async function unpackRow(text, quantum, length) {
  return text ? (await unpackTables(text, quantum, length, length))[0] : null;
}
