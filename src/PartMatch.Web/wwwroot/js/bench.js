// The bench sheet: a variant entered position by position, from what lies on the bench.

import { ask, newest } from './api.js';
import { offerFamilies, offerPositions, offerVariants, positionName } from './choices.js';
import { address, count, el, partLink, plain, ruled, section, sentence, ways } from './format.js';
import { addresses, bind, drawStrip } from './page.js';

const form = document.querySelector('form[data-question]');
const { family, variant, position } = form.elements;
const status = document.getElementById('status');
let shown = null; // the family as it is now: a variant may just have been added
let told = null;

drawStrip();

const ofFamily = newest();
const showFamily = (code, chosen = {}) => ofFamily(async () => (code ? ask(`/api/families/${encodeURIComponent(code)}`) : null), found => {
  shown = found;
  offerVariants(variant, shown, chosen.variant, 'A new one');
  offerPositions(position, shown, chosen.position, 'All of them');
});

family.addEventListener('change', () => showFamily(family.value));

const bench = question => address('bench.html', { family: family.value, ...question });

function takeTold() {
  const node = told ? el('p', { class: 'notice done', tabindex: '-1', 'data-first': true }, told) : null;
  told = null;
  return node;
}

async function wholeFamily(answer, again) {
  const { newVariant } = await import('./bench-new.js');
  const begin = newVariant(answer.family, {
    status,
    saved(code, change) {
      history.pushState(null, '', bench({ variant: code }));
      told = `${code} is begun, as change ${change}. Take a position, whichever comes to hand first.`;
      return again();
    },
  });
  return {
    title: answer.title, summary: `${answer.title}.`, said: `${answer.title}: ${count(answer.variants.length, 'variant')}.`,
    content: [
      el('section', { class: 'headline' }, el('h2', { 'data-first': true, tabindex: '-1' }, answer.title),
        el('p', null, 'Go on with a variant, or begin one that no book has yet: '),
        el('ul', null, answer.variants.map(one => el('li', null, el('a', { href: bench({ variant: one.variant }) }, one.name))))),
      section('Begin a new variant', begin.node), addresses(answer),
    ],
  };
}

const isOpen = one => one.state === 'not-recorded';

const states = { 'fitted': '✓ recorded', 'none': '– nothing there', 'not-recorded': '? not recorded yet' };

const fittedParts = one => one.parts.map((part, index) => [index ? ', ' : '', partLink(part.part, part.number), ` ${part.name}`]);

/** Every position in its group, each leading to its place on this sheet. */
function positions(answer) {
  const groups = [...new Set(answer.positions.map(one => one.group))].toSorted();
  return groups.map(group => {
    const own = answer.positions.filter(one => one.group === group);
    return section(`${sentence(plain(group))} (${own.filter(one => !isOpen(one)).length} of ${own.length})`,
      ruled(`Positions: ${plain(group)}`, ['Position', 'State', 'What sits there'], own.map(one => [
        el('a', { href: bench({ variant: answer.asked.variant, position: one.position }) }, one.name), states[one.state], fittedParts(one),
      ]), { className: 'places' }));
  });
}

function head(answer) {
  const { asked, variant: one } = answer;
  const done = answer.positions.filter(place => !isOpen(place)).length;
  const total = answer.positions.length;
  return el('section', { class: 'headline' }, el('h2', { 'data-first': !position.value, tabindex: '-1' }, one.name),
    el('p', { class: 'why' }, `${done} of ${count(total, 'position')}`),
    el('progress', { class: 'progress', max: total, value: done, 'aria-label': 'Positions recorded' }),
    ways(['This variant', address('family.html', { family: asked.family, variant: asked.variant })],
      ['Edit its engine facts', address('record.html', { book: asked.family, table: 'engine', where: `variant:${asked.variant}` })],
      ['What is wrong or missing', address('consistency.html', { family: asked.family, variant: asked.variant })],
      ['History', address('history.html', { book: asked.family })]));
}

async function onePosition(answer, again) {
  const place = answer.positions.find(one => one.position === position.value);
  if (!place) return el('p', { class: 'notice' }, `This family has no position ${position.value}.`);
  const { positionForm } = await import('./bench-position.js');
  return positionForm(answer, place, {
    status, states,
    saved({ change }) {
      const open = answer.positions.filter(one => isOpen(one) && one !== place);
      const next = open.find(one => one.group === place.group) ?? open[0];
      told = [`${place.name}: ${change === undefined ? 'nothing was different from what is there' : `recorded, as change ${change}`}. `,
        next ? ['Next: ', el('a', { href: bench({ variant: answer.asked.variant, position: next.position }) }, next.name)] : 'Every position is recorded.'];
      return again();
    },
  });
}

async function oneVariant(answer, again) {
  const { stillOpen } = await import('./bench-open.js');
  const { name } = answer.variant;
  const where = position.value ? positionName(shown, position.value) : '';
  return {
    title: [where, name].filter(Boolean).join(' of '), summary: `${name}${where ? `, ${where}` : ''}.`,
    said: `${name}: ${answer.positions.filter(one => !isOpen(one)).length} of ${answer.positions.length} positions recorded.`,
    content: [
      takeTold(), head(answer),
      el('div', { class: where ? 'bench' : 'bench whole' },
        el('div', null, where ? await onePosition(answer, again) : positions(answer)),
        stillOpen(answer, one => bench({ variant: answer.asked.variant, position: one }))),
      where ? positions(answer) : null,
      addresses(answer),
    ],
  };
}

bind({
  prepare: async query => showFamily(await offerFamilies(family, query.get('family')), { variant: query.get('variant'), position: query.get('position') }),
  toApi: query => {
    if (query.size === 0) return null;
    const code = `/api/families/${encodeURIComponent(query.get('family') ?? ' ')}`;
    return query.get('variant') ? `${code}/variants/${encodeURIComponent(query.get('variant'))}` : code;
  },
  render: (answer, _, again) => (answer.variant ? oneVariant(answer, again) : wholeFamily(answer, again)),
  empty: () => el('p', { class: 'quiet' }, 'Choose the family. Then begin a variant that is in no book yet, or go on with one that is: position by position, ',
    'in whatever order the engine comes apart.'),
});
