// What a field may name: the rows of other tables as proposals, what a typed code stands for, and the features of a kind.

import { askOnce } from './api.js';
import { el, say } from './format.js';

const tables = {
  part: 'parts', evidence: 'evidence', variant: 'variants', position: 'positions', kind: 'kinds', work: 'works', maker: 'makers', item: 'items', seller: 'sellers', listing: 'listings',
};
const atOnce = 300;
const found = 40;

/** The table that a reference names rows of. */
export const tableOf = refers => tables[refers];

const rowsAt = (book, table, query) => `/api/books/${encodeURIComponent(book)}/${table}?${new URLSearchParams({ used: 'true', ...query })}`;

const read = (book, table, query) => askOnce(rowsAt(book, table, query)).catch(() => ({ rows: [] }));

/** What a row is called by people. */
function nameOf(table, row) {
  if (table === 'evidence') return [say('grade', row.grade), [row.source, row.author, row.date].filter(Boolean).join(', ')].filter(Boolean).join(': ');
  if (table === 'items') return [row.part, row.condition].filter(Boolean).join(', ');
  if (table === 'listings') return [row.title, row.seenOn].filter(Boolean).join(', ');
  return row.name ?? '';
}

/** The row that a code names, with its book, in this book or in one that it uses; null when there is none. */
export async function findNamed(book, refers, code) {
  if (!code) return null;
  const table = tables[refers];
  const { rows } = await read(book, table, { where: `${refers}:${code}`, limit: '2' });
  const one = rows.find(row => row.book === book) ?? rows[0];
  return one ? { ...one, name: nameOf(table, one.row) } : null;
}

/** Every code of a table of few rows, with its name. */
export async function allNamed(book, refers) {
  const { rows } = await read(book, tables[refers], { limit: '1000' });
  return rows.map(one => ({ code: one.row[refers], name: nameOf(tables[refers], one.row) }));
}

async function kindOf(book, column, code) {
  if (!code) return null;
  if (column === 'kind') return code;
  if (column === 'item') return kindOf(book, 'part', (await findNamed(book, 'item', code))?.row.part);
  return (await findNamed(book, column === 'part' ? 'part' : 'position', code))?.row.kind ?? null;
}

/** The features of the kind that a column tells (`kindFrom`), or none when it tells no kind yet. */
export async function featuresFor(book, column, code) {
  const kind = await kindOf(book, column, code.trim());
  if (!kind) return [];
  const { rows } = await read(book, 'features', { where: `kind:${kind}`, limit: '1000' });
  return rows.map(({ row }) => ({ ...row, choices: row.choices?.split('|') ?? [] }));
}

const options = entries => entries.map(({ code, name }) => el('option', { value: code, label: name ? `${code} – ${name}` : null }));

/** A list of proposals for a text field that always holds these. */
export const fixedList = (id, entries) => el('datalist', { id }, options(entries));

/** Proposals from a table: all of a small one; of a large one those that contain what is typed. */
export function proposals(id, book, refers, extra = []) {
  const list = el('datalist', { id }, options(extra));
  const table = tables[refers];
  let isAll = null;
  let latest = '';
  async function offer(query, text) {
    const { rows, cursor } = await read(book, table, query);
    if (isAll === null) isAll = cursor === undefined;
    const entries = rows.map(one => ({ code: one.row[refers], name: nameOf(table, one.row) }));
    if (text === latest) list.replaceChildren(...options([...extra, ...entries]));
  }

  return {
    list,
    /** Called when the field receives the focus, and whenever something is typed. */
    async feed(text) {
      latest = isAll ? '' : text;
      if (isAll === null) await offer({ limit: String(atOnce) }, text);
      if (isAll === false && text.length > 1) await offer({ q: text, limit: String(found) }, text);
    },
  };
}

/** Proposals from what a column of the table holds already. */
export async function usedWords(book, table, column) {
  const { rows } = await read(book, table, { limit: '1000' });
  return [...new Set(rows.map(one => one.row[column]))].filter(Boolean).toSorted().map(code => ({ code, name: '' }));
}
