// A report as comma-separated values: one line for each number or word, with its path.

/**
 * @param {any} value
 * @param {string} path
 * @returns {[string, string|number|boolean][]}
 */
function lines(value, path) {
  if (value === null || typeof value !== "object") return [[path, value ?? ""]];
  return Object.entries(value).flatMap(([key, each]) => lines(each, path ? `${path}.${key}` : key));
}

/**
 * A text with a comma, a quote or a line's end stands in quotes; one that a spreadsheet would take for a formula is
 * kept from it by an apostrophe.
 * @param {string|number|boolean} value
 */
function cell(value) {
  if (typeof value !== "string") return String(value);
  const plain = /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(plain) ? `"${plain.replace(/"/g, '""')}"` : plain;
}

/** @param {object} report */
export const flat = (report) => ["key,value", ...lines(report, "").map((line) => line.map(cell).join(","))].join("\r\n") + "\r\n";
