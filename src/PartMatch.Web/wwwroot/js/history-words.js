// How the history speaks: of a point in time, of rows and changes by their addresses, and of what stands against a step.

import { address, el, sentence } from './format.js';
import { columnName, tableName } from './record-words.js';

const local = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' });
const universal = new Intl.DateTimeFormat('en-GB', { timeStyle: 'short', dateStyle: 'medium', timeZone: 'UTC' });
const universalTime = new Intl.DateTimeFormat('en-GB', { timeStyle: 'short', timeZone: 'UTC' });
const relative = new Intl.RelativeTimeFormat('en', { numeric: 'auto' });

function ago(date) {
  const seconds = Math.round((date - Date.now()) / 1000);
  for (const [unit, size, most] of [['second', 1, 60], ['minute', 60, 3600], ['hour', 3600, 86400]]) {
    if (Math.abs(seconds) < most) return relative.format(Math.round(seconds / size), unit);
  }
  return '';
}

/** A point in time: how long ago, in the reader's own time, and in UTC. */
export function moment(at) {
  const date = new Date(at);
  const near = ago(date);
  const isSameDay = date.getUTCDate() === date.getDate();
  return el('time', { datetime: at }, near ? `${near}, ` : '', `${local.format(date)} (${(isSameDay ? universalTime : universal).format(date)} UTC)`);
}

export const rowAddress = (book, table, key) => address('record.html', { book, table, key });

/** A step to one change, wherever in the history it stands. */
export const changeLink = number => el('a', { href: address('history.html', { cursor: number + 1 }) + `#change-${number}` }, `change ${number}`);

/** The page of a row whose address in the API is given. */
export function rowPage(link) {
  const [book, table, key] = link.replace(/^\/api\/books\//, '').split('/').map(decodeURIComponent);
  return rowAddress(book, table, key);
}

const keyInWords = key => key.split(',').filter(Boolean).join(' · ');

const shownAtOnce = 12; // ours, no source: what still is a list and not a wall

/** A row as it is said: the name of its table, then the filled cells of its key. */
const named = found => found
  .replace(/^[\w-]+: ([\w-]+)\.csv ([^\s:]*(?::[^\s:]+)*)/, (_, table, key) => `${tableName(table)}: ${keyInWords(key)}`)
  .replace(/^([\w-]+) (\S+), which was changed again since \(([\w, ]+)\)$/, (_, table, key, columns) =>
    `${tableName(table)}: ${keyInWords(key)}, changed again since (${columns.split(', ').map(column => columnName(table, column).toLowerCase()).join(', ')})`);

/** Why something cannot be done: each row that depends on it as a link, each later change as well, and what to do about them. */
export function dependents(problem, { tellsMend = false } = {}) {
  const list = problem.errors.map(error => {
    const [, change] = /change (\d+)/.exec(error.mend ?? '') ?? [];
    const said = named(error.found);
    const reason = error.expected.replace(/^no row that would be wrong afterwards: (no \w+ '.*)?/, ''); // that it names what would be gone is said by the link
    return el('li', null, error.row ? el('a', { href: rowPage(error.row) }, said) : sentence(said),
      error.row && reason ? el('div', { class: 'quiet small' }, sentence(reason)) : null,
      change ? [' – take back ', changeLink(Number(change)), ' first'] : null);
  });
  const mends = tellsMend ? new Set(problem.errors.map(error => error.mend ?? '').filter(mend => mend && !/change \d/.test(mend))) : [];
  const rest = list.slice(shownAtOnce);
  return el('div', null, [...mends].map(mend => el('p', null, `To mend: ${mend}.`)), el('ul', null, list.slice(0, shownAtOnce)),
    rest.length ? el('details', null, el('summary', null, `${rest.length} more`), el('ul', null, rest)) : null);
}
