// Which column of a price list holds what: as it was proposed, and as the user says it.

import { Refusal } from './api.js';
import { clearFaults, faultSummary } from './faults.js';
import { count, el, sentence } from './format.js';

const roles = [['number', 'Number'], ['price', 'Price'], ['quantity', 'Packs in stock'], ['pack', 'Pieces for the price'], ['condition', 'Condition'], ['core-deposit', 'Deposit for the old part'], ['note', 'Note']];

const needed = ['number', 'price'];
const shortened = text => (text.length > 24 ? `${text.slice(0, 23)}…` : text);

/** Puts a fault into a form inside the answer: what was judged stays. */
export function atTop(error, form) {
  if (!(error instanceof Refusal)) throw error;
  for (const old of document.querySelectorAll('#list-answer .faults')) old.remove(); // one at a time bears the title's id
  const summary = faultSummary(form, error.problem);
  form.prepend(summary);
  summary.focus();
}

/** What the user says of each column; what no column holds is said too, so that it is not proposed again. */
function columnsOf(form) {
  const said = [...form.querySelectorAll('[data-column]')].filter(choice => choice.value !== 'none');
  const twice = said.find((choice, index) => said.findIndex(other => other.value === choice.value) < index);
  if (twice) throw new Refusal({ type: '', title: 'Two columns for one thing', errors: [{ field: twice.name, found: twice.selectedOptions[0].text, expected: 'what no other column holds', mend: 'leave one of them at “nothing of it”' }] });
  const table = form.querySelector('[name="table"]')?.value;
  const unsaid = roles.map(([role]) => role).filter(role => !needed.includes(role)).map(role => [role, 'none']);
  return { ...Object.fromEntries(unsaid), ...Object.fromEntries(said.map(choice => [choice.value, choice.dataset.column])), ...(table ? { table } : {}) };
}

/** Which table of a page is read. Another one has other columns, so choosing it forgets those. */
function tableField(tables, other) {
  if (!tables) return null;
  const shown = ({ table, caption, heads, rows }) => `${table}: ${caption ?? heads.join(', ')} (${count(rows, 'row')})`;
  return el('div', { class: 'cell' }, el('label', { for: 'list-table' }, 'Table of the page'),
    el('select', { id: 'list-table', name: 'table', 'aria-describedby': 'list-table-hint', onchange: event => other(event.target.value) },
      tables.offered.map(one => el('option', { value: one.table, selected: one.table === tables.taken }, shown(one)))),
    el('p', { class: 'hint', id: 'list-table-hint' }, `${sentence(tables.because)}.`));
}

/** One field for each column, with its first cells: what the heads do not say the user can see. */
const columnFields = (columns, mapped = []) => el('div', { class: 'cells' }, columns.map(({ column, head, cells }) => {
  const taken = mapped.find(one => one.column === column);
  const id = `column-${column}`;
  return el('div', { class: 'cell' }, el('label', { for: id }, `Column ${column}${head === `column ${column}` ? '' : `, “${head}”`}`),
    el('select', { id, name: id, 'data-column': column, 'aria-describedby': `${id}-hint` }, el('option', { value: 'none' }, 'nothing of it'),
      roles.map(([role, name]) => el('option', { value: role, selected: taken?.holds === role }, name))),
    el('p', { class: 'hint', id: `${id}-hint` }, taken ? `${sentence(taken.because)}. ` : '', cells.length ? `Holds ${cells.map(cell => `“${shortened(cell)}”`).join(', ')}.` : 'Holds nothing.'));
}));

/** A form that says which column holds what; `again` judges with that. */
export function mappingForm({ columns, mapped, tables }, again) {
  const mapping = el('form', {
    class: 'question asking', novalidate: true, onsubmit: event => {
      event.preventDefault();
      clearFaults(mapping);
      mapping.querySelector('.faults')?.remove();
      try {
        again(columnsOf(mapping));
      } catch (error) {
        atTop(error, mapping);
      }
    },
  }, tableField(tables, table => again({ table })), columnFields(columns, mapped), el('div', { class: 'cell' }, el('p', { class: 'hint' }, 'Without a column of the pieces that a price is for, each price is for one piece.')),
  el('div', { class: 'actions' }, el('button', null, 'Judge again with these columns')));
  return mapping;
}
