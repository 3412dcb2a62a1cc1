// Changes of the base as the history tells them, each with before and after, and the way to take one back.

import { Refusal, ask } from './api.js';
import { signature, write } from './editor.js';
import { faultSummary } from './faults.js';
import { address, count, el, ruled, sentence } from './format.js';
import { columnName, tableName } from './record-words.js';

const acts = { edit: 'Changed by hand', import: 'Book brought in', merge: 'Another state of the book taken in', undo: 'Change taken back', promote: 'Reading made a value of its number' };
const openAtOnce = 3;
const listed = 50; // most rows of a change that the server tells

const local = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' });
const universal = new Intl.DateTimeFormat('en-GB', { timeStyle: 'short', dateStyle: 'medium', timeZone: 'UTC' });
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
  return el('time', { datetime: at }, near ? `${near}, ` : '', `${local.format(date)} (${universal.format(date)} UTC)`);
}

export const rowAddress = (book, table, key) => address('record.html', { book, table, key });

/** A step to one change, wherever in the history it stands. */
const changeLink = number => el('a', { href: address('history.html', { cursor: number + 1 }) + `#change-${number}` }, `change ${number}`);

/** The page of a row whose address in the API is given. */
export function rowPage(link) {
  const [book, table, key] = link.replace(/^\/api\/books\//, '').split('/').map(decodeURIComponent);
  return rowAddress(book, table, key);
}

/** Why something cannot be done: each row that depends on it as a link, each later change as well. */
export function dependents(problem) {
  return el('ul', null, problem.errors.map(error => {
    const [, change] = /change (\d+)/.exec(error.mend ?? '') ?? [];
    const said = error.found.replace(/^[\w-]+: ([\w-]+)\.csv /, (_, table) => `${tableName(table)}: `);
    const reason = error.expected.replace(/^no row that would be wrong afterwards: (no \w+ '.*)?/, ''); // that it names what would be gone is said by the link
    return el('li', null, error.row ? el('a', { href: rowPage(error.row) }, said) : sentence(said), error.row && reason ? el('div', { class: 'quiet small' }, sentence(reason)) : null,
      change ? [' – take back ', changeLink(Number(change)), ' first'] : null);
  }));
}

function beforeAndAfter(row) {
  const cells = row.differs.map(column => [columnName(row.table, column), row.before?.[column] ?? '–', row.after?.[column] ?? '–']);
  if (row.before && row.after) return ruled(`What changed in ${row.key}`, ['', 'Before', 'After'], cells, { className: 'slim differences' });
  return ruled(row.after ? `What was added as ${row.key}` : `What was removed as ${row.key}`, ['', row.after ? 'Added' : 'Removed'],
    cells.map(([name, before, after]) => [name, row.after ? after : before]), { className: 'slim differences' });
}

function rowNode(change, row) {
  const what = row.before && row.after ? 'changed' : row.after ? 'added' : 'removed';
  return el('li', { class: 'changed-row' },
    el('p', null, el('strong', null, `${tableName(row.table)}: `), what === 'removed' ? el('span', { class: 'number' }, row.key) : el('a', { class: 'number long', href: rowAddress(change.book, row.table, row.key) }, row.key), ` ${what}`),
    beforeAndAfter(row));
}

function rows(change) {
  const list = el('ul', { class: 'bare' });
  const fill = () => { if (!list.hasChildNodes()) list.append(...change.rows.map(row => rowNode(change, row))); };
  if (change.rowCount <= openAtOnce) {
    fill();
    return list;
  }

  const shown = change.rows.length < change.rowCount ? change.rows.length === listed ? `, the first ${listed} of them here` : `, ${change.rows.length} of them here` : '';
  return el('details', { class: 'rows', ontoggle: fill }, el('summary', null, `${count(change.rowCount, 'row')}${shown}`), list);
}

/** Asks once more, then takes the change back; a refusal names what stands against it. */
function undoing(change, done) {
  const place = el('div', { class: 'undo' });
  const open = el('button', { type: 'button', class: 'plain', 'aria-expanded': 'false', onclick: confirm }, 'Take this change back', el('span', { class: 'unseen' }, ` (${change.change})`));

  function close() {
    place.replaceChildren(open);
    open.focus();
  }

  function confirm() {
    const note = signature({ why: 'Why take it back' });
    const form = el('form', { class: 'question', novalidate: true, 'aria-label': `Take change ${change.change} back` },
      el('p', { class: 'ask' }, `${count(change.rowCount, 'row goes', 'rows go')} back to what it was before, as a change of its own.`.replace('rows go back to what it was', 'rows go back to what they were')),
      el('div', { class: 'cells' }, note.cells),
      el('p', { class: 'actions' }, el('button', null, 'Yes, take it back'), el('button', { type: 'button', class: 'plain', onclick: close }, 'Leave it')));
    form.addEventListener('submit', async event => {
      event.preventDefault();
      form.querySelector('button').disabled = true;
      place.querySelector('.faults')?.remove();
      try {
        const answer = await write(`/api/history/${change.change}/undo`, { note: note.read() });
        await done(answer);
      } catch (error) {
        if (!(error instanceof Refusal)) throw error;
        if (error.problem.status === 401) note.askForToken();
        const summary = faultSummary(form, error.problem.status === 409 ? { ...error.problem, errors: [] } : error.problem);
        if (error.problem.status === 409) summary.querySelector('h2').after(dependents(error.problem));
        form.before(summary);
        summary.focus();
        form.querySelector('button').disabled = false;
      }
    });
    place.replaceChildren(form);
    note.why.focus();
  }

  place.append(open);
  return place;
}

function changeNode(change, done) {
  return el('article', { class: 'entry', id: `change-${change.change}`, 'data-undone': change.undoneBy ? 'yes' : null, tabindex: '-1' },
    el('h3', null, acts[change.act], ' ', el('span', { class: 'by' }, change.who ? `by ${change.who}` : 'by somebody unnamed')),
    el('p', { class: 'small quiet' }, `Change ${change.change} in `, el('a', { href: address('record.html', { book: change.book }) }, change.book), ', ', moment(change.at),
      change.undoes ? ['. It took back ', changeLink(change.undoes)] : '', change.undoneBy ? ['. Taken back by ', changeLink(change.undoneBy)] : '', '.'),
    change.why ? el('p', { class: 'reason' }, `“${change.why}”`) : null,
    rows(change),
    change.undoneBy ? null : undoing(change, done));
}

/** The changes of an answer of the history; after one is taken back it shows the answer as it is then, and calls `undone`. */
export function changesNode(answer, { undone = () => {} } = {}) {
  const place = el('div', { class: 'changes' });
  function draw({ changes }) {
    place.replaceChildren(...changes.map(change => changeNode(change, async ({ change: by, undoes }) => {
      draw(await ask(answer.permalink));
      const told = el('p', { class: 'notice', tabindex: '-1' }, `Change ${undoes} is taken back, by change ${by}.`);
      place.prepend(told);
      told.focus();
      undone();
    })));
  }

  draw(answer);
  return place;
}
