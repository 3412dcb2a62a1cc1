// Items: the single parts in hand of a family, and one of them in full.

import { ask, newest } from './api.js';
import { offerFamilies } from './choices.js';
import { address, count, el, met, partLink, ruled, section, sentence } from './format.js';
import { addresses, bind, choose, drawStrip } from './page.js';

const form = document.querySelector('form[data-question]');
const { family } = form.elements;
const item = document.getElementById('item'); // of the elements, item is a method
const status = document.getElementById('status');
let told = null; // what has just been stored, for the next drawing

drawStrip();

const origins = {
  'donor': 'Donor engine’s own', 'yard-pull': 'Pulled in the yard', 'arrival': 'Came by post', 'bench-stock': 'On the bench already', '': 'Of unrecorded origin',
};

const conditions = { 'within-limits': ['yes', 'within limits'], 'beyond-limits': ['no', 'beyond limits'], 'not-inspected': ['not-known', 'not inspected'] };

/** A condition as word and shape. */
export const condition = code => met(...conditions[code]);

const itemsAt = code => `/api/items?family=${encodeURIComponent(code)}`;

const ofFamily = newest();
const offerItems = (code, chosen) => ofFamily(async () => (code ? ask(itemsAt(code)) : { items: [] }), ({ items }) => {
  item.replaceChildren(el('option', { value: '' }, 'All of them'), ...items.map(one => el('option', { value: one.item }, `${one.item} – ${one.name}`)));
  choose(item, chosen);
});

family.addEventListener('change', () => offerItems(family.value, ''));

const toItem = (code, one) => el('a', { class: 'number', href: address('items.html', { family: code, item: one }) }, one);

function ofOrigin(answer, origin) {
  const own = answer.items.filter(one => (one.origin ?? '') === origin);
  return own.length === 0 ? null : section(origins[origin], ruled(origins[origin], ['Item', 'Part', 'As found', { text: 'Read', class: 'count' }, 'Condition'],
    own.map(one => [toItem(answer.asked.family, one.item), [partLink(one.part), ` ${one.name}`], one.asFound ? sentence(one.asFound) : '–',
      String(one.readings), condition(one.condition)]), { className: 'restack' }));
}

/** A button that opens a form below it; the form is fetched when it is wanted. */
function opening(text, open) {
  const place = el('div', { class: 'opening' });
  const button = el('button', { type: 'button' }, text);
  const close = () => { place.replaceChildren(button); button.focus(); };
  button.addEventListener('click', async () => {
    const { node, focus } = await open(close);
    place.replaceChildren(node);
    focus();
  });
  place.append(button);
  return place;
}

function newItem(book, again) {
  return opening('Record a new item', async cancel => (await import('./item-new.js')).newItem(book, {
    status, cancel,
    saved(code, change) {
      history.pushState(null, '', address('items.html', { family: book, item: code }));
      told = `${code} is recorded, as change ${change}.`;
      return again();
    },
  }));
}

function takeTold() {
  const node = told ? el('p', { class: 'notice done', tabindex: '-1', 'data-first': true }, told) : null;
  told = null;
  return node;
}

function list(answer, again) {
  const { items, asked } = answer;
  const beyond = items.filter(one => one.condition === 'beyond-limits').length;
  const open = items.filter(one => one.condition === 'not-inspected').length;
  const heading = items.length === 0 ? 'No item is recorded' : count(items.length, 'item');
  return {
    title: `${family.selectedOptions[0].text}: items`, summary: `every item of ${family.selectedOptions[0].text}.`, said: `${heading}.`,
    content: [
      takeTold(),
      el('section', { class: 'headline' }, el('h2', { 'data-first': true, tabindex: '-1' }, heading),
        el('p', null, items.length === 0 ? 'An item is one single part that somebody has in hand: the donor’s own, one from the yard, one that came by post.'
          : `${items.length - beyond - open} within every limit that is recorded, ${beyond} beyond a limit, ${open} not inspected: `,
        items.length === 0 ? '' : 'not everything with a limit was read well enough.'),
        newItem(asked.family, again)),
      Object.keys(origins).map(origin => ofOrigin(answer, origin)),
      addresses(answer),
    ],
  };
}

async function render(answer, query, again) {
  if (answer.items) return list(answer, again);
  const { itemSheet } = await import('./item-sheet.js');
  const done = text => {
    told = text;
    return again();
  };
  const { content, ...rest } = await itemSheet(answer, { condition, opening, status, done });
  return { ...rest, content: [takeTold(), content] };
}

function toApi(query) {
  if (query.size === 0) return null;
  const [code, one] = [query.get('family') ?? '', query.get('item')];
  return one ? `/api/items/${encodeURIComponent(code)}/${encodeURIComponent(one)}` : itemsAt(code);
}

bind({
  prepare: async query => offerItems(await offerFamilies(family, query.get('family')), query.get('item')),
  toApi,
  render,
  empty: () => el('p', { class: 'quiet' }, 'Choose a family, such as ', el('a', { href: address('items.html', { family: 'tern-16' }) }, 'the Tern 16'),
    ', for what lies on its bench; or record what you have just taken off an engine.'),
});
