// Will it fit: the form, and asking.

import { familyShower, offerFamilies, offerPositions, offerVariants, positionName, variantName } from './choices.js';
import { el } from './format.js';
import { bind, drawStrip } from './page.js';

const form = document.querySelector('form[data-question]');
const { family, variant, position, part, from, maker, several } = form.elements;
const neighbours = document.getElementById('neighbours');
let shown = null;

drawStrip();

/** Shows the fields of one way to name the part; whose number and which part are asked only where a number means several. */
function showBy(by) {
  for (const block of form.querySelectorAll('[data-by]')) {
    const [control] = block.querySelectorAll('input, select');
    block.hidden = block.dataset.by !== by || ((control === maker || control === several) && control.options.length < 2);
    control.disabled = block.hidden;
  }
}

const ofFamily = familyShower();
const showFamily = code => ofFamily(code, found => {
  shown = found;
  offerVariants(variant, shown, '');
  offerVariants(from, shown, '');
  offerPositions(position, shown, '');
  for (const select of neighbours.querySelectorAll('select')) offerPositions(select, shown, select.value);
});

let rows = 0;

function addNeighbour(text = '') {
  const [place, ...rest] = text.split('=');
  const row = ++rows;
  const select = el('select', { id: `neighbour-${row}`, 'data-row': true });
  const number = el('input', { id: `neighbour-part-${row}`, class: 'typed', autocomplete: 'off', spellcheck: 'false', 'data-row': true, value: rest.join('=') });
  const joined = el('input', { type: 'hidden', name: 'with', 'data-row': true, value: text });
  const join = () => { joined.value = select.value || number.value.trim() ? `${select.value}=${number.value.trim()}` : ''; };
  offerPositions(select, shown, place, 'Choose a position');
  select.addEventListener('change', join);
  number.addEventListener('input', join);
  const block = el('div', { class: 'pair neighbour' },
    el('div', null, el('label', { for: select.id }, 'Position'), select),
    el('div', null, el('label', { for: number.id }, 'Part there, or none'), number),
    el('button', { type: 'button', class: 'plain', onclick: () => { block.remove(); document.getElementById('add-neighbour').focus(); } }, 'Take away'), joined);
  neighbours.append(block);
  return select;
}

form.addEventListener('change', event => {
  if (event.target.name === 'by') showBy(event.target.value);
  if (event.target === family) showFamily(family.value);
});
document.getElementById('add-neighbour').addEventListener('click', () => addNeighbour().focus());

async function prepare(query) {
  await showFamily(await offerFamilies(family, query.get('family')));
  neighbours.replaceChildren();
  for (const text of query.getAll('with')) addNeighbour(text);
  several.replaceChildren();
  maker.replaceChildren();
  if (query.get('maker')) maker.append(el('option', { value: '' }, 'any maker'), el('option', { value: query.get('maker') }, query.get('maker')));
  const by = query.has('from') ? 'from' : 'part';
  form.querySelector(`#by-${by}`).checked = true;
  showBy(by);
}

/** The number means several parts: offer the makers where they settle it, else the parts, as the errors name them. */
function offerSeveral(problem) {
  if (!problem.type.endsWith('/ambiguous-number')) return;
  const parts = problem.errors.map(error => error.expected);
  const makers = parts.map(text => text.split(':')[0]);
  const isSettledByMaker = new Set(makers).size === makers.length;
  if (isSettledByMaker) maker.replaceChildren(el('option', { value: '' }, 'Choose a maker'), ...parts.map((text, index) => el('option', { value: makers[index] }, text)));
  else several.replaceChildren(el('option', { value: '' }, 'Choose a part'), ...parts.map(text => el('option', { value: text.split(' (')[0] }, text)));
  showBy('part');
}

several.addEventListener('change', () => {
  if (several.value) part.value = several.value;
});

bind({
  prepare,
  refused: offerSeveral,
  toApi: query => (query.size ? `/api/fit?${query}` : null),
  render: async (answer, query) => {
    const { fitAnswer } = await import('./fit-answer.js'); // not before there is an answer: the blank form loads without it
    const { asked } = answer;
    const place = positionName(shown, asked.position);
    const one = asked.item ? `${asked.item.split('/').at(-1)} (${asked.part.replace(/^[^:]*:/, '')})` : part.value || asked.part;
    const what = asked.part === 'none' ? `Nothing at ${place}` : asked.from ? `${place} of ${variantName(shown, asked.from)}` : `${one} as ${place}`;
    const summary = `${what} on ${variantName(shown, asked.variant)}${query.get('built') ? `, built ${asked.built}` : ''}${asked.serial === undefined ? '' : `, serial ${asked.serial}`}${asked.with.length ? `, with ${asked.with.join(', ')}` : ''}.`;
    return { title: what, summary, said: `Answer: ${answer.headlineText}.`, content: fitAnswer(answer, shown) };
  },
  empty: () => el('p', { class: 'quiet' }, 'Say which part should go where; the answer appears here, with everything it rests on.'),
});
