// The bench sheet as a source: made once in a sitting, with the first thing that is stored, and cited by everything after it.

import { rowWith } from './book-rows.js';
import { newSource } from './evidence-choice.js';
import { el, evidenceLink } from './format.js';

const nameOf = (book, variant) => `partmatch-bench ${book} ${variant}`;

/** The source of this sitting is from now on this one. */
export const keepSource = (book, variant, code) => sessionStorage.setItem(nameOf(book, variant), code);

/** What everything on this sheet rests on. `add(set, note)` puts it into a change where it is not stored yet. */
export async function benchSource(book, variant) {
  const kept = sessionStorage.getItem(nameOf(book, variant));
  const stored = kept ? await rowWith(book, 'evidence', { evidence: kept }) : null;
  const fresh = newSource(book, { id: 'sheet', speaksOf: 'number', what: `bench sheet, ${variant}`, isGraded: false });
  if (!stored) return { cells: fresh.cells, add: (set, note) => fresh.add(set, note) };
  const { row } = stored;
  let isFresh = false;
  function begin() {
    isFresh = true;
    block.replaceWith(...fresh.cells);
    fresh.cells[0].querySelector('input').focus();
  }

  const block = el('p', { class: 'ask' }, 'Rests on this sitting’s sheet: ', [row.source, row.author, row.date].filter(Boolean).join(', '), ' ',
    evidenceLink(book, kept), ' ', el('button', { type: 'button', class: 'plain', onclick: begin }, 'Begin another sheet'));
  return { cells: [block], add: async (set, note) => (isFresh ? fresh.add(set, note) : { code: kept, control: null }) };
}
