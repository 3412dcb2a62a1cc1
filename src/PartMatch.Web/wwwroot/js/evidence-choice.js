// On what a change rests: a piece of evidence that is recorded, or a new source that is stored in the same change.

import { nextCode } from './book-rows.js';
import { today } from './editor.js';
import { el, say, sentence } from './format.js';
import { proposals } from './record-references.js';

const grades = ['measured', 'trial-fitted', 'ran-under-load', 'makers-document', 'reported', 'inferred'];

/** A field of a form: label, control, hint. */
export function cell(id, label, control, hint = '') {
  control.id = id;
  if (hint) control.setAttribute('aria-describedby', `${id}-hint`);
  return el('div', { class: 'cell' }, el('label', { for: id }, label), control, hint ? el('p', { class: 'hint', id: `${id}-hint` }, hint) : null);
}

export const typedInput = (name, attributes) => el('input', { name, autocomplete: 'off', spellcheck: 'false', ...attributes });

export const choices = (name, entries, value) =>
  el('select', { name }, entries.map(([code, text]) => el('option', { value: code, selected: code === value }, text)));

/** The fields of a new source; `add(set, note)` puts it into a change and gives its code. */
export function newSource(book, { id, grade = 'measured', speaksOf, what = '', isGraded = true }) {
  const source = typedInput(`${id}-what`, { value: what });
  const date = typedInput(`${id}-date`, { value: today() });
  const instrument = typedInput(`${id}-instrument`);
  const graded = choices(`${id}-grade`, grades.map(code => [code, sentence(say('grade', code))]), grade);
  const cells = [
    isGraded ? cell(`${id}-grade`, 'Grade', graded) : null,
    cell(`${id}-what`, 'What the source is', source, 'So that somebody finds it again, such as bench sheet 12.'),
    cell(`${id}-date`, 'Made or written on', date, 'Year and month such as 2019-04, or with the day.'),
    cell(`${id}-instrument`, 'Instrument', instrument, 'What it was measured with, if it was.'),
  ].filter(Boolean);
  return {
    cells,
    async add(set, { who }) {
      const code = await nextCode(book, 'evidence', 'evidence', 'ev');
      const row = { evidence: code, grade: graded.value, date: date.value.trim(), author: who, source: source.value.trim() };
      set.add('evidence', row, { evidence: source, grade: graded, date, source });
      if (speaksOf || instrument.value.trim()) {
        set.add('sources', { evidence: code, speaksOf, instrument: instrument.value.trim() }, { instrument, evidence: source });
      }

      return { code, source: row.source, control: source };
    },
  };
}

/** The same with the choice of a source that is recorded. `recorded` is the code that is proposed, '' for a new one. */
export function evidenceChoice(book, { id, recorded = '', ...question }) {
  const fresh = newSource(book, { id, ...question });
  const { list, feed } = proposals(`list-${id}`, book, 'evidence');
  const by = choices(`${id}-by`, [['new', 'A new source'], ['recorded', 'One that is recorded']], recorded ? 'recorded' : 'new');
  const code = typedInput(`${id}-code`, { class: 'typed', list: list.id, value: recorded });
  const codeCell = cell(`${id}-code`, 'Its code', code, 'Begin to type a code, a source or a name.');
  for (const type of ['focus', 'input']) code.addEventListener(type, () => feed(code.value.trim()));
  function show() {
    codeCell.hidden = by.value !== 'recorded';
    for (const one of fresh.cells) one.hidden = by.value === 'recorded';
  }

  by.addEventListener('change', show);
  show();
  codeCell.append(list);
  return {
    cells: [cell(`${id}-by`, 'It rests on', by), codeCell, ...fresh.cells],
    add: async (set, note) => (by.value === 'recorded' ? { code: code.value.trim(), control: code } : fresh.add(set, note)),
  };
}
