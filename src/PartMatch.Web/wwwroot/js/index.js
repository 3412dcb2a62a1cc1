// The first sheet: which families are loaded.

import { Refusal, ask } from './api.js';
import { address, el, ruled } from './format.js';
import { drawStrip } from './page.js';

drawStrip();

const place = document.getElementById('families');

function table(families) {
  return ruled('Engine families in the base', ['Family', 'Variants', { text: 'Positions', class: 'count' }, { text: 'Parts', class: 'count' }, 'Note'], families.map(one => [
    el('a', { href: address('family.html', { family: one.family }) }, [one.makerName, one.title].filter(Boolean).join(' ')),
    one.variants.map((variant, index) => [index ? ', ' : '', el('a', { href: address('family.html', { family: one.family, variant }) }, variant)]),
    String(one.positions), String(one.parts), one.note ?? '']), { className: 'restack' });
}

place.replaceChildren(el('p', { class: 'waiting' }, 'Reading the base …'));
try {
  const { families } = await ask('/api/families');
  place.replaceChildren(families.length === 0 ? el('p', null, 'None yet. ', el('a', { href: 'books.html' }, 'Import a parts book'), ' to begin.') : table(families));
} catch (error) {
  if (!(error instanceof Refusal)) throw error;
  place.replaceChildren(el('p', { class: 'notice' }, `${error.problem.title}. Load the page again when the server runs.`));
}
