// Changes of the base as the history tells them, each with before and after, and the way to take one back.

import { Refusal, ask } from './api.js';
import { signature, write } from './editor.js';
import { faultSummary } from './faults.js';
import { address, count, el, keyText, ruled } from './format.js';
import { changeLink, dependents, moment, rowAddress } from './history-words.js';
import { cellWords, columnName, tableName } from './record-words.js';

const acts = {
  edit: 'Changed by hand', import: 'Book brought in', merge: 'Another state of the book taken in', undo: 'Change taken back',
  promote: 'Reading made a value of its number',
};
const openAtOnce = 3;
const listed = 50; // most rows of a change that the server tells

function beforeAndAfter(row) {
  const said = (cells, column) => (cells?.[column] === undefined ? '–' : cellWords(column, cells[column]));
  const cells = row.differs.map(column => [columnName(row.table, column), said(row.before, column), said(row.after, column)]);
  if (row.before && row.after) return ruled(`What changed in ${row.key}`, ['Field', 'Before', 'After'], cells, { className: 'slim differences' });
  return ruled(row.after ? `What was added as ${row.key}` : `What was removed as ${row.key}`, ['Field', row.after ? 'Added' : 'Removed'],
    cells.map(([name, before, after]) => [name, row.after ? after : before]), { className: 'slim differences' });
}

function rowNode(change, row) {
  const what = row.before && row.after ? 'changed' : row.after ? 'added' : 'removed';
  const link = el('a', { class: 'number long', href: rowAddress(change.book, row.table, row.key) }, keyText(row.key));
  return el('li', { class: 'changed-row' },
    el('p', null, el('strong', null, `${tableName(row.table)}: `), what === 'removed' ? el('span', { class: 'number' }, keyText(row.key)) : link, ` ${what}`),
    beforeAndAfter(row));
}

function rows(change) {
  const list = el('ul', { class: 'bare' });
  const fill = () => { if (!list.hasChildNodes()) list.append(...change.rows.map(row => rowNode(change, row))); };
  if (change.rowCount <= openAtOnce) {
    fill();
    return list;
  }

  const here = change.rows.length === listed ? `, the first ${listed} of them here` : `, ${change.rows.length} of them here`;
  const shown = change.rows.length < change.rowCount ? here : '';
  return el('details', { class: 'rows', ontoggle: fill }, el('summary', null, `${count(change.rowCount, 'row')}${shown}`), list);
}

/** Asks once more, then takes the change back; a refusal names what stands against it. */
function undoing(change, done) {
  const place = el('div', { class: 'undo' });
  const open = el('button', { type: 'button', class: 'plain', 'aria-expanded': 'false', onclick: confirm }, 'Take this change back',
    el('span', { class: 'unseen' }, ` (${change.change})`));

  function close() {
    place.replaceChildren(open);
    open.focus();
  }

  function confirm() {
    const note = signature({ why: 'Why take it back' });
    const form = el('form', { class: 'question', novalidate: true, 'aria-label': `Take change ${change.change} back` },
      el('p', { class: 'ask' }, `${count(change.rowCount, 'row goes back to what it was', 'rows go back to what they were')} before: a change of its own.`),
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
        if (error.problem.status === 409) summary.querySelector('h2').after(
          el('p', null, error.problem.errors.some(one => one.row) ? 'Rows that stand now would be wrong afterwards. ' : '', 'Nothing was taken back.'), dependents(error.problem, { tellsMend: true }));
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
    el('p', { class: 'small quiet' }, `Change ${change.change} in `, el('a', { href: address('record.html', { book: change.book }) }, change.book), ', ',
      moment(change.at),
      change.undoes ? ['. It took back ', changeLink(change.undoes)] : '', change.undoneBy ? ['. Taken back by ', changeLink(change.undoneBy)] : '', '.'),
    change.why ? el('p', { class: 'reason' }, `“${change.why}”`) : null,
    rows(change),
    change.undoneBy ? null : undoing(change, done));
}

/** The changes of an answer of the history; after one is taken back it shows the answer as it is then, and calls `undone` with it. */
export function changesNode(answer, { undone = () => {} } = {}) {
  const place = el('div', { class: 'changes' });
  function draw({ changes }) {
    place.replaceChildren(...changes.map(change => changeNode(change, async ({ change: by, undoes }) => {
      const now = await ask(answer.permalink);
      draw(now);
      const told = el('p', { class: 'notice', tabindex: '-1' }, `Change ${undoes} is taken back, by change ${by}.`);
      place.prepend(told);
      told.focus();
      undone(now);
    })));
  }

  draw(answer);
  return place;
}
