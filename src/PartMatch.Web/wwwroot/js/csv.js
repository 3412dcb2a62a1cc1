// Comma-separated values as RFC 4180 writes them.

/** The rows of a text, each a list of cells. */
export function readCsv(text) {
  const rows = [[]];
  for (const [, quoted, bare, end] of text.replace(/^\uFEFF/, '').matchAll(/(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r?\n|$)/g)) {
    rows.at(-1).push(quoted === undefined ? bare : quoted.replaceAll('""', '"'));
    if (end === '') break;
    if (end !== ',') rows.push([]);
  }

  return rows.filter(row => row.length > 1 || row[0]);
}

/** Has a spreadsheet put semicolons between the columns, as it does where decimals are written with a comma? */
export function hasSemicolons(text) {
  const [header] = text.split(/[\r\n]/, 1);
  return header.includes(';') && !header.includes(',');
}

const cell = text => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);

export const writeCsv = rows => rows.map(row => `${row.map(cell).join(',')}\n`).join('');
