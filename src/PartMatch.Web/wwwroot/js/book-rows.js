// Rows of the books as the pages that write them need them: all of a table, one by its key cells, the next free code.

import { ask } from './api.js';

const at = (book, table) => `/api/books/${encodeURIComponent(book)}/${table}`;

/** Every row that has these cells (`{column: value}`); with `used`, of the books that this one uses as well. */
export async function rowsWith(book, table, cells = {}, { used = false, q = '' } = {}) {
  const rows = [];
  let cursor = null;
  do {
    const query = new URLSearchParams({ limit: '1000', ...(used ? { used: 'true' } : {}), ...(q ? { q } : {}), ...(cursor ? { cursor } : {}) });
    for (const [column, value] of Object.entries(cells)) query.append('where', `${column}:${value}`);
    const page = await ask(`${at(book, table)}?${query}`);
    rows.push(...page.rows);
    cursor = page.cursor;
  } while (cursor);
  return rows;
}

/** The row that has these cells, or null. */
export const rowWith = async (book, table, cells, options) => (await rowsWith(book, table, cells, options))[0] ?? null;

/** A code that no row of the table has yet: `ev-0103` after `ev-0102`. */
export async function nextCode(book, table, column, prefix) {
  const taken = (await rowsWith(book, table, {}, { q: `${prefix}-` })).map(one => new RegExp(`^${prefix}-(\\d+)$`).exec(one.row[column])?.[1]).filter(Boolean);
  return `${prefix}-${String(Math.max(0, ...taken.map(Number)) + 1).padStart(4, '0')}`;
}

/** Sends rows as one change. */
export const changesAt = book => at(book, 'changes');

/** The rows of one change, and the controls in which their cells were typed: a fault of a cell is told there. */
export function rowSet() {
  const rows = [];
  const places = new Map(); // what the server calls a cell → the control it was typed in
  function put(row, cells, controls) {
    const recorded = Object.entries(cells).filter(([, text]) => text !== undefined && text !== null && text !== '');
    const index = rows.push({ ...row, row: Object.fromEntries(recorded) }) - 1;
    for (const [column, control] of Object.entries(controls)) if (control) places.set(`rows[${index}].${column}`, control);
  }

  return {
    rows,
    add: (table, cells, controls = {}) => put({ table }, cells, controls),
    /** `seen` is the row as it was read: `{table, key, version}`; without it the row is added. */
    change: ({ table, key, version }, cells, controls = {}) => put({ table, key, version }, cells, controls),
    body: () => ({ rows }),
    /** Tells the controls which cells they are. */
    mark() {
      for (const [cell, control] of places) control.dataset.field = [control.dataset.field, cell].filter(Boolean).join(' ');
    },
    /** The table and column of `rows[2].value`; null for a fault of something else. */
    cellOf(field) {
      const [, index, column] = /^rows\[(\d+)\](?:\.(\w+))?$/.exec(field) ?? [];
      return index === undefined ? null : { table: rows[index].table, column: column ?? null, control: places.get(field) ?? null };
    },
  };
}
