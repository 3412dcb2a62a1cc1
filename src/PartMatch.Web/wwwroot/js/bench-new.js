// Beginning a variant: its row, and the bench sheet that speaks for it, as one change.

import { keepSource } from './bench-source.js';
import { changeForm } from './change-form.js';
import { cell, newSource, typedInput } from './evidence-choice.js';

/** The form; `saved(code, change)` once the variant is stored. */
export function newVariant(book, { status, saved }) {
  const typed = typedInput('variant', { class: 'typed', autocapitalize: 'off', 'aria-required': 'true' });
  const name = typedInput('name', { 'aria-required': 'true' });
  const span = ['builtFrom', 'builtTo', 'serialFrom', 'serialTo'].map(column => typedInput(column, {}));
  const [builtFrom, builtTo, serialFrom, serialTo] = span;
  const source = newSource(book, { id: 'sheet', speaksOf: 'number', what: 'bench sheet', isGraded: false });
  let evidence = null;
  return changeForm({
    book, name: 'variant', label: 'A new variant', button: 'Begin it', status,
    ask: 'Leave empty what is not known: an open end of a span is no limit.',
    cells: [
      cell('new-variant', 'Short name', typed, 'Small letters, digits and hyphens, such as ts.'), cell('new-name', 'Name', name, 'As builders call it.'),
      cell('new-built-from', 'Built from', builtFrom, 'Year and month such as 2019-04.'), cell('new-built-to', 'Built up to', builtTo),
      cell('new-serial-from', 'Serial from', serialFrom), cell('new-serial-to', 'Serial up to', serialTo), ...source.cells,
    ],
    async gather(set, note) {
      const { code, control } = await source.add(set, note);
      evidence = code;
      const texts = Object.fromEntries([typed, name, ...span].map(one => [one.name, one.value.trim()]));
      set.add('variants', { ...texts, evidence: code }, { variant: typed, name, builtFrom, builtTo, serialFrom, serialTo, evidence: control });
    },
    saved(answer) {
      const code = typed.value.trim();
      keepSource(book, code, evidence);
      return saved(code, answer.change);
    },
  });
}
