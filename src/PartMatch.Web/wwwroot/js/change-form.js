// A form that stores what is typed in it as one change. What is refused is told at its field, and nothing typed is lost.

import { Refusal } from './api.js';
import { changesAt, rowSet } from './book-rows.js';
import { signature, write } from './editor.js';
import { clearFaults, explainCell, faultSummary } from './faults.js';
import { el, ruled } from './format.js';
import { goneMeanwhile, whoChanged } from './record-conflict.js';
import { draftOf, draftOffer, findDraft, forgetDraft } from './record-draft.js';
import { columnName, rowName } from './record-words.js';

const isText = control => control.name && control.type !== 'file' && !['who', 'token'].includes(control.name);
const isTick = control => /radio|checkbox/.test(control.type);

/** What is typed, by the name of the control; several ticks of a name are joined by |. */
export function readTexts(form) {
  const texts = {};
  for (const control of [...form.elements].filter(isText)) {
    const value = isTick(control) && !control.checked ? '' : control.value;
    texts[control.name] = isTick(control) && texts[control.name] ? [texts[control.name], value].filter(Boolean).join('|') : value;
  }

  return texts;
}

/** Puts texts into controls of those names. */
export function writeTexts(controls, texts) {
  for (const control of [...controls].filter(isText)) {
    const text = texts[control.name];
    if (text === undefined) continue;
    if (isTick(control)) control.checked = text.split('|').includes(control.value);
    else control.value = text;
    control.dispatchEvent(new Event('change', { bubbles: true }));
  }
}

const isApart = (one, other) => Object.keys({ ...one, ...other }).some(name => (one[name] ?? '') !== (other[name] ?? ''));

/** A refusal that the page finds itself, before anything is sent. */
export const missing = (field, expected, mend) => new Refusal({ type: '', title: 'Something is missing', errors: [{ field, found: '', expected, mend }] });

/** The faults of cells, each once; a cell without a control of its own is named by its table and column. */
function readable(problem, set) {
  const told = new Set();
  const errors = problem.errors.flatMap(error => {
    const cell = set?.cellOf(error.field);
    const named = cell && [rowName(cell.table), cell.column ? columnName(cell.table, cell.column) : ''].filter(Boolean).join(', ');
    const field = !cell || cell.control ? error.field : named;
    const once = `${cell?.control?.id ?? field} ${error.found} ${error.expected.replace(/; or none$/, '')}`; // one field can fill cells of two rows
    return told.has(once) ? [] : [(told.add(once), { ...error, field })];
  });
  return { ...problem, errors };
}

/** Theirs beside mine, and the way to save mine all the same. */
function overtaken({ present, yours }, table, save) {
  const theirs = present.row;
  const mine = yours.row ?? yours;
  const apart = Object.keys({ ...theirs, ...mine }).filter(name => theirs[name] !== mine[name]);
  return el('section', { class: 'conflict', tabindex: '-1', 'aria-labelledby': 'conflict-title' },
    el('h2', { id: 'conflict-title' }, 'Somebody else changed this row while you were at it'),
    el('p', null, 'Theirs is stored: ', whoChanged(present.changed) || 'by somebody unnamed', '. Yours is not stored yet, and nothing you typed is lost.'),
    ruled('Where the two differ', ['Column', 'Theirs', 'Yours'], apart.map(name => [columnName(table, name), theirs[name] ?? '–', mine[name] ?? '–']),
      { className: 'restack slim' }),
    el('p', { class: 'buttons' }, el('button', { type: 'button', onclick: save }, 'Save mine in its place')));
}

/**
 * @param question `{name, label, ask, cells, button, why}`: name of its draft on this address, what it is called, its fields.
 * `gather(set, note)` puts the rows into the set, or stores something else first; `saved(answer)` is told the end; `restore(texts)` makes fields ready into
 * which a draft is put; `adopt(row)` takes the row that somebody else stored meanwhile (null: removed) as the one that is changed;
 * `send(set, note)` is for what is no change of rows; `cancel` closes the form without saving.
 */
export function changeForm({ book, name, label, ask, cells, button: text, why, status, gather, saved, restore, adopt = () => {}, send, cancel }) {
  const here = `${location.pathname}${location.search} ${name}`;
  const note = signature({ why });
  const button = el('button', null, text);
  const form = el('form', { class: 'question row', novalidate: true, 'aria-label': label },
    ask ? el('p', { class: 'ask' }, ask) : null, el('div', { class: 'cells' }, cells), el('div', { class: 'cells signature' }, note.cells),
    el('p', { class: 'actions' }, button,
      cancel ? el('button', { type: 'button', class: 'plain', onclick: () => { forgetDraft(here); cancel(); } }, 'Leave it') : ''));
  const place = el('div', { class: 'editing' }, form);
  const state = { isDone: false, base: readTexts(form) };
  const isChanged = () => form.isConnected && !state.isDone && isApart(readTexts(form), state.base);
  const draft = draftOf(here, { isChanged, read: () => ({ texts: readTexts(form) }) });

  function show(node) {
    form.before(node);
    node.focus();
    node.scrollIntoView({ block: 'nearest' });
  }

  function clear() {
    clearFaults(form);
    for (const control of form.querySelectorAll('[data-field^="rows["]')) delete control.dataset.field; // cells of an earlier try
    for (const old of place.querySelectorAll('.faults, .conflict')) old.remove();
  }

  function refuse(problem, set) {
    status.textContent = '';
    if (problem.status === 412) {
      const again = row => () => { adopt(row); form.requestSubmit(); };
      const { table } = set.cellOf(problem.errors[0].field.replace('.version', '')) ?? set.rows[0];
      show(problem.present ? overtaken(problem, table, again(problem.present)) : goneMeanwhile({ changed: problem.removed, again: again(null) }));
      return;
    }

    if (problem.status === 401) note.askForToken();
    const summary = faultSummary(form, readable(problem, set), problem.type === '/problems/bad-row' ? explainCell : undefined);
    summary.append(el('p', null, 'Nothing was stored, and nothing you typed is lost.'));
    show(summary);
  }

  async function save() {
    clear();
    button.disabled = true;
    status.textContent = 'Saving.';
    const set = rowSet();
    try {
      const said = note.read();
      await gather?.(set, said);
      set.mark();
      const answer = await (send ? send(said) : write(changesAt(book), { body: set.body(), note: said }));
      state.isDone = true;
      draft.forget();
      draft.end();
      await saved(answer);
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      refuse(error.problem, set);
    } finally {
      button.disabled = false;
    }
  }

  form.addEventListener('submit', event => { event.preventDefault(); save(); });
  for (const type of ['input', 'change']) form.addEventListener(type, () => draft.keep());
  const before = findDraft(here);
  if (before) {
    form.before(draftOffer(before, [], {
      forget: () => forgetDraft(here),
      async take() {
        await restore?.(before.texts);
        writeTexts(form.elements, before.texts);
        draft.keep();
        form.querySelector('input, select, textarea').focus();
      },
    }));
  }

  return {
    node: place, form,
    /** What is in the form now is what it began with. */
    settle() { state.base = readTexts(form); },
    focus: () => form.querySelector('input:not([type=hidden]), select, textarea')?.focus(),
  };
}
