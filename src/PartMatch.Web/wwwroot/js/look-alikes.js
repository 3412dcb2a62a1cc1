// Look-alikes: of one number, or ranked over a whole family.

import { familyShower, offerFamilies, offerKinds } from './choices.js';
import { address, el } from './format.js';
import { whileTyping } from './number-typing.js';
import { bind, drawStrip } from './page.js';

const form = document.querySelector('form[data-question]');
const { number, family, kind } = form.elements;
const filters = document.getElementById('filters');

drawStrip();
whileTyping(number, part => address('look-alikes.html', { number: part, family: family.value }));

/** Filters belong to the ranked list: with a number they leave the question. */
function showFilters(written) {
  filters.hidden = written.trim() !== '';
  for (const control of filters.querySelectorAll('select')) control.disabled = filters.hidden;
}

const ofFamily = familyShower();
const showFamily = code => ofFamily(code, found => offerKinds(kind, found, ''));

number.addEventListener('input', () => showFilters(number.value));
family.addEventListener('change', () => showFamily(family.value));

async function prepare(query) {
  await showFamily(await offerFamilies(family, query.get('family'), 'every family'));
  showFilters(query.get('number') ?? '');
}

function toApi(query) {
  if (query.size === 0) return null;
  if (!query.get('number')) return `/api/look-alikes?${query}`;
  const rest = new URLSearchParams(query);
  rest.delete('number');
  return `/api/numbers/${encodeURIComponent(query.get('number'))}/look-alikes${rest.size ? `?${rest}` : ''}`;
}

/** Either half is fetched when it is needed, not with the blank form. */
async function render(answer, query, again) {
  const place = family.selectedOptions[0].text;
  if (answer.pairs) return (await import('./look-alike-pairs.js')).rankedPairs(answer, query, { familyName: place, again });
  return (await import('./look-alike-number.js')).lookAlikesOf(answer, place);
}

bind({
  prepare,
  toApi,
  render,
  empty: () => el('p', { class: 'quiet' }, 'Write a number as it stands in a listing or on the part; or choose a family alone, such as ',
    el('a', { href: address('look-alikes.html', { family: 'tern-16' }) }, 'the Tern 16'), ', for all its pairs.'),
});
