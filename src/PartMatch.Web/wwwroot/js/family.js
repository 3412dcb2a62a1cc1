// Engine families: variants, positions, and one variant in full.

import { ask } from './api.js';
import { familyShower, offerFamilies, offerVariants } from './choices.js';
import { address, count, el, facts, partLink, plain, ruled, section, sentence, sourceText, sourced, spanText, ways } from './format.js';
import { addresses, bind, drawStrip } from './page.js';

const form = document.querySelector('form[data-question]');
const { family, variant } = form.elements;
let shown = null;

drawStrip();

const ofFamily = familyShower();
const showFamily = code => ofFamily(code, found => {
  shown = found;
  offerVariants(variant, shown, '', 'None: the family as a whole');
});

form.addEventListener('change', event => {
  if (event.target === family) showFamily(family.value);
});

function variants(answer) {
  return ruled(`Variants of ${answer.title}`, ['Variant', 'Built and numbered', 'Source', { text: 'Ask', class: 'acts' }], answer.variants.map(one => [
    el('a', { href: address('family.html', { family: answer.family, variant: one.variant }) }, one.name), spanText(one) || 'not recorded', sourced(answer.family, one.source),
    answer.variants.length > 1 ? el('a', { href: address('compare.html', { family: answer.family, variants: [one.variant, answer.variants.find(other => other !== one).variant].join(',') }) }, 'compare') : '–',
  ]), { className: 'restack' });
}

function positions(answer) {
  return answer.groups.map(group => section(sentence(plain(group)), ruled(`Positions: ${plain(group)}`, ['Position', 'Kind of part', 'Used in sums as'],
    answer.positions.filter(position => position.group === group).map(position => [position.name, plain(position.kind), position.role ? plain(position.role) : '–']), { className: 'slim' })));
}

const record = (book, table, question) => address('record.html', { book, table, ...question });

function keepFamily(book) {
  return ways(
    ['Bench sheet: enter an engine', address('bench.html', { family: book })], ['Items in hand', address('items.html', { family: book })],
    ['Edit variants', record(book, 'variants')], ['Add a variant', `${record(book, 'variants')}&new`], ['Edit positions', record(book, 'positions')],
    ['Edit fitted parts', record(book, 'fitments')], ['Everything in the book', record(book)], ['History', address('history.html', { book })]);
}

function keepVariant(book, variant) {
  const where = `variant:${variant}`;
  return ways(
    ['Bench sheet', address('bench.html', { family: book, variant })], ['Edit this variant', record(book, 'variants', { key: variant })], ['Its engine facts', record(book, 'engine', { where })],
    ['Its fitted parts', record(book, 'fitments', { where })], ['History', address('history.html', { book, table: 'variants', key: variant })]);
}

function wholeFamily(answer) {
  return {
    title: answer.title,
    said: `${answer.title}: ${count(answer.variants.length, 'variant')}, ${count(answer.positions.length, 'position')}.`,
    content: [
      el('section', { class: 'headline' }, el('h2', { 'data-first': true, tabindex: '-1' }, answer.title), answer.note ? el('p', null, sentence(answer.note), '.') : null,
        el('p', null, `${count(answer.variants.length, 'variant')}, ${count(answer.positions.length, 'position')} each. `, answer.variants.length > 1 ? el('a', { href: address('compare.html', { family: answer.family, variants: answer.variants.slice(0, 6).map(one => one.variant).join(',') }) }, 'Lay all side by side') : ''),
        keepFamily(answer.family)),
      section('Variants', variants(answer)),
      positions(answer),
      addresses(answer),
    ],
  };
}

function fitted(position) {
  if (position.state === 'none') return '– carries nothing';
  if (position.state === 'not-recorded') return '? not recorded';
  return el('ul', { class: 'bare' }, position.parts.map(part => el('li', null, partLink(part.part, part.number), ` ${part.name}`, part.quantity > 1 ? ` ×${part.quantity}` : '', spanText(part) ? el('span', { class: 'quiet' }, ` (${spanText(part)})`) : '')));
}

/** Engine facts; where one source states them all it is named once. */
function engine({ asked, engine: known, variant: one }) {
  const sources = new Set(known.map(fact => sourceText(fact.source)));
  const alike = sources.size === 1;
  return section('The engine',
    ruled(`Facts about ${one.name}`, ['Fact', { text: 'Value', class: 'count' }, ...(alike ? [] : ['Source'])], known.map(fact => [sentence(plain(fact.property)), fact.text, ...(alike ? [] : [sourced(asked.family, fact.source)])]), { className: 'slim' }),
    alike ? el('p', { class: 'quiet small' }, `All from one source – `, sourced(asked.family, known[0].source), '.') : null);
}

function oneVariant(answer) {
  const { asked, variant: one } = answer;
  const groups = [...new Set(answer.positions.map(position => position.group))].toSorted();
  const others = (shown?.variants ?? []).filter(other => other.variant !== one.variant);
  return {
    title: one.name,
    said: `${one.name}: ${count(answer.engine.length, 'fact')} about the engine, ${count(answer.positions.length, 'position')}.`,
    content: [
      el('section', { class: 'headline' }, el('h2', { 'data-first': true, tabindex: '-1' }, one.name),
        facts([['Made', spanText(one)], ['Source', sourced(asked.family, one.source)], ['Beside', others.map((other, index) => [index ? ', ' : '', el('a', { href: address('compare.html', { family: asked.family, variants: `${one.variant},${other.variant}` }) }, other.name)])]]),
        keepVariant(asked.family, one.variant)),
      engine(answer),
      groups.map(group => section(sentence(plain(group)), ruled(`Fitted: ${plain(group)}`, ['Position', 'What the maker fitted', { text: 'Ask', class: 'acts' }], answer.positions.filter(position => position.group === group).map(position => [
        position.name, fitted(position),
        el('ul', { class: 'bare inline' }, position.state === 'fitted' ? others.map(other => el('li', null, el('a', { href: address('fit.html', { family: asked.family, variant: other.variant, position: position.position, from: one.variant }) }, `on ${other.variant}?`, el('span', { class: 'unseen' }, ` ${position.name}`)))) : []),
      ]), { className: 'fittings' }))),
      addresses(answer),
    ],
  };
}

async function list() {
  const { families } = await ask('/api/families');
  return families.length === 0
    ? el('p', { class: 'notice' }, 'No family is loaded. ', el('a', { href: 'books.html' }, 'Import a parts book'), '.')
    : ruled('Families loaded', ['Family', 'Variants', { text: 'Positions', class: 'count' }, { text: 'Parts', class: 'count' }, 'Note'], families.map(one => [
      el('a', { href: address('family.html', { family: one.family }) }, [one.makerName, one.title].filter(Boolean).join(' ')), one.variants.join(', '), String(one.positions), String(one.parts), one.note ?? '']), { className: 'restack' });
}

bind({
  prepare: async query => showFamily(await offerFamilies(family, query.get('family'))),
  toApi: query => {
    if (!query.get('family')) return query.size ? '/api/families/%20' : null;
    return `/api/families/${encodeURIComponent(query.get('family'))}${query.get('variant') ? `/variants/${encodeURIComponent(query.get('variant'))}` : ''}`;
  },
  render: (answer, query) => (query.get('variant') ? oneVariant(answer) : wholeFamily(answer)),
  empty: list,
});
