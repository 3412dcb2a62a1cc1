// Another state of a book: what would come in, where both differ and which of the two to take, then the merge, all or nothing.

import { Refusal, ask, askTable } from './api.js';
import { incomingRows } from './books-incoming.js';
import { hasSemicolons, readCsv, writeCsv } from './csv.js';
import { authorization, signature } from './editor.js';
import { clearFaults, faultSummary } from './faults.js';
import { address, count, el, facts, keyText, ruled } from './format.js';
import { changeLink, dependents } from './history-words.js';
import { columnName, tableName } from './record-words.js';

const mostListed = 300;
const heads = ['file', 'key', 'column', 'here', 'there', 'take'];
const bare = text => text.replace(/^'/, ''); // put in front so that a spreadsheet does not reckon with the cell
const camel = column => column.replace(/_(\w)/g, (_, letter) => letter.toUpperCase());
const tableOf = file => file.replace(/\.csv$/, '');

const link = (book, question) => `/api/books/${encodeURIComponent(book)}/merge?${new URLSearchParams(Object.entries(question).filter(([, text]) => text))}`;

/** A conflict keeps its cells as they came; `take` is `here`, `there` or ''. */
const conflictsOf = csv => readCsv(csv).slice(1).map(cells => Object.fromEntries(heads.map((head, index) => [head, cells[index] ?? ''])));

const tableText = conflicts => writeCsv([heads, ...conflicts.map(one => heads.map(head => one[head]))]);

function bodyOf(zip, conflicts) {
  const body = new FormData();
  body.append('book', zip);
  if (conflicts.length) body.append('decisions', new Blob([tableText(conflicts)], { type: 'text/csv' }), 'conflicts.csv');
  return body;
}

const post = (body, headers = {}) => ({ method: 'POST', headers: { ...headers, ...authorization() }, body });

/** What a merge would do: its counts, the rows it would add, and every cell that differs. */
async function tried(book, zip) {
  const { answer, table } = await askTable(link(book, { 'dry-run': 'true' }), post(zip, { 'Content-Type': 'application/zip' }));
  if (answer) return { counts: answer.counts, files: answer.files, conflicts: [] };
  const conflicts = conflictsOf(table);
  const kept = conflicts.map(one => ({ ...one, take: 'here' })); // counted as if all stayed as it is
  const { counts, files } = await ask(link(book, { 'dry-run': 'true' }), post(bodyOf(zip, kept)));
  return { conflicts, counts, files };
}

function choice(conflict, index, side, changed) {
  const id = `take-${index}-${side}`;
  return el('label', { class: 'choice', for: id },
    el('input', {
      type: 'radio', id, name: `take-${index}`, value: side, checked: conflict.take === side,
      onchange: () => { conflict.take = side; changed(); },
    }),
    el('span', null, bare(conflict[side]) || el('i', null, 'empty'),
      el('span', { class: 'unseen' }, ` (${side}; ${conflict.column} of ${keyText(bare(conflict.key))})`)));
}

function conflictTable(book, conflicts, changed) {
  const toRow = one => address('record.html', { book, table: tableOf(one.file), key: bare(one.key) });
  const row = (one, index) => [
    [`${tableName(tableOf(one.file))}: `, el('a', { class: 'number long', href: toRow(one) }, keyText(bare(one.key)))],
    columnName(tableOf(one.file), camel(one.column)), choice(one, index, 'here', changed), choice(one, index, 'there', changed),
  ];
  return ruled('Cells in which the two differ', ['Row', 'Column', 'Here', 'There'], conflicts.slice(0, mostListed).map(row), { className: 'restack versions' });
}

/** Puts the decisions of a filled-in table where they belong; gives how many were found, and how many belong nowhere. */
function takeDecisions(conflicts, csv) {
  const nameOf = one => JSON.stringify(heads.slice(0, 5).map(head => bare(one[head])));
  const byName = new Map(conflicts.map(one => [nameOf(one), one]));
  let [found, lost] = [0, 0];
  for (const one of conflictsOf(csv)) {
    const take = one.take.trim().toLowerCase();
    const own = byName.get(nameOf(one));
    if (own && ['here', 'there'].includes(take)) {
      own.take = take;
      found += 1;
    } else if (!own || take) {
      lost += 1;
    }
  }

  return { found, lost };
}

/** The conflicts as a file to fill in elsewhere, and back. */
function elsewhere(book, conflicts, redraw) {
  const said = el('p', { role: 'status', class: 'small' });
  const file = el('input', { type: 'file', id: 'decisions', accept: '.csv,text/csv' });
  file.addEventListener('change', async () => {
    const csv = await file.files[0].text();
    if (hasSemicolons(csv)) {
      said.textContent = 'No decision was taken from the file: its columns are separated by semicolons, expected commas. '
        + 'To mend: export it from the spreadsheet again with commas between the columns and points in the numbers, or decide here.';
      return;
    }

    const { found, lost } = takeDecisions(conflicts, csv);
    redraw();
    const rest = lost ? ` ${count(lost, 'line')} belong to no cell of this list, or say neither here nor there.` : '';
    said.textContent = `${count(found, 'decision')} taken from the file.${rest}`;
  });
  const out = el('a', { class: 'button', download: `${book}-conflicts.csv`, href: '#' }, 'Take the list out as CSV');
  out.addEventListener('click', () => {
    URL.revokeObjectURL(out.href);
    out.href = URL.createObjectURL(new Blob([tableText(conflicts)], { type: 'text/csv' }));
  });
  const takeAll = side => {
    for (const one of conflicts) one.take = side;
    redraw();
  };
  const all = side => el('button', { type: 'button', class: 'plain', onclick: () => takeAll(side) }, `All from ${side}`);
  return el('div', { class: 'cell wide asking' }, el('p', { class: 'buttons' }, all('here'), all('there'), out),
    el('label', { for: 'decisions' }, 'Bring it back, filled in'), file, said);
}

/** The second step of a merge. `merged()` is called once the rows are stored. */
export async function mergeOf({ book, zip, status, merged }) {
  const { counts, files, conflicts } = await tried(book, zip);
  const note = signature();
  const place = el('div', { class: 'conflicts' });
  const open = el('p', { role: 'status' });
  const waitingNow = () => conflicts.filter(one => one.take === '').length;
  const tell = () => {
    open.textContent = conflicts.length === 0 ? 'No cell differs.'
      : `${count(conflicts.length, 'cell')} with two different texts; waiting for a decision: ${waitingNow() || 'none'}.`;
  };
  const redraw = () => {
    place.replaceChildren(conflicts.length ? conflictTable(book, conflicts, tell) : '',
      conflicts.length > mostListed ? el('p', null, `The first ${mostListed} are listed; the rest is in the CSV.`) : '');
    tell();
  };
  const heading = el('h3', { tabindex: '-1' }, `${count(counts.added, 'row')} would be added`);
  const button = el('button', null, 'Merge');
  const form = el('form', { class: 'question asking', novalidate: true, 'aria-label': `Merge into ${book}` },
    el('div', { class: 'cells signature' }, note.cells), el('div', { class: 'actions' }, button));
  const whole = el('section', { class: 'merge' }, heading,
    facts([['Added', `${count(counts.added, 'row')} that only the other state has`], ['Equal', count(counts.same, 'row')],
      ['Differing', count(counts.kept, 'row')], ['Only here', 'every such row stays as it is: a merge removes nothing']]),
    incomingRows(files), open, conflicts.length ? elsewhere(book, conflicts, redraw) : null, place, form);

  function refuse(problem) {
    status.textContent = '';
    if (problem.status === 401) note.askForToken();
    const summary = faultSummary(form, problem.type === '/problems/in-use' ? { ...problem, errors: [] } : problem);
    if (problem.type === '/problems/in-use') summary.append(dependents(problem));
    summary.append(el('p', null, 'Nothing was stored; what was decided is still here. ',
      problem.type === '/problems/merge-conflicts' ? 'Cells differ now that did not before: read the zip again.' : ''));
    form.before(summary);
    summary.focus();
  }

  form.addEventListener('submit', async event => {
    event.preventDefault();
    clearFaults(form);
    whole.querySelector('.faults')?.remove();
    const waiting = waitingNow();
    if (waiting) {
      const error = { field: 'Here or there', found: `${count(waiting, 'cell')} open`, expected: 'here or there in each', mend: 'decide them, or take all from one side' };
      refuse({ type: '', title: 'Not everything is decided', errors: [error] });
      return;
    }

    button.disabled = true;
    status.textContent = 'Merging.';
    try {
      const done = await ask(link(book, note.read()), post(bodyOf(zip, conflicts)));
      const end = el('h3', { tabindex: '-1' }, done.change === undefined ? 'Nothing was different' : ['Merged, as ', changeLink(done.change)]);
      const { added, changed, kept } = done.counts;
      whole.replaceChildren(end, facts([['Added', count(added, 'row')], ['Changed', count(changed, 'row')], ['Kept as here', count(kept, 'row')]]));
      status.textContent = 'Merged.';
      end.focus();
      merged();
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      refuse(error.problem);
    } finally {
      button.disabled = false;
    }
  });
  redraw();
  return { node: whole, focus: () => heading.focus() };
}
