// Compare variants: position by position, what they share and what goes across.

import { familyOf, offerFamilies, offerGroups, variantName } from './choices.js';
import { count, el, pageOf, partLink, plain, ruled, say, section, sentence, spanText, verdict } from './format.js';
import { addresses, bind, drawStrip } from './page.js';

const form = document.querySelector('form[data-question]');
const { family, group } = form.elements;
let shown = null;

drawStrip();

async function showFamily(code, chosen) {
  shown = code ? await familyOf(code) : null;
  offerGroups(group, shown, '');
  document.getElementById('variants').replaceChildren(...(shown?.variants ?? []).map(variant => el('label', { class: 'choice' },
    el('input', { type: 'checkbox', name: 'variants', value: variant.variant, 'data-join': ',', id: `variant-${variant.variant}`, checked: chosen?.includes(variant.variant) }), ` ${variant.name}`)));
}

form.addEventListener('change', event => {
  if (event.target === family) showFamily(family.value);
});

function fitted(state) {
  if (state.state === 'none') return el('span', { class: 'quiet' }, '– carries nothing');
  if (state.state === 'not-recorded') return el('span', { class: 'quiet' }, '? not recorded');
  return el('ul', { class: 'bare' }, state.parts.map(part => el('li', null,
    partLink(part.part, part.number), part.quantity > 1 ? ` ×${part.quantity}` : '', spanText(part) ? el('div', { class: 'quiet' }, spanText(part)) : '')));
}

function across(pair) {
  return el('li', null, el('a', { class: 'across', href: pageOf(pair.fit) }, el('span', { class: 'code' }, `${pair.from} → ${pair.to}`), verdict(pair.headline, { short: true })));
}

const effects = { stops: 'stops', work: 'work', alters: 'alters' };

function difference(one) {
  return el('li', null, sentence(one.name), one.effect ? el('span', { class: 'effect' }, ` (${effects[one.effect]})`) : '', one.same === 'not-known' ? ' – not known' : '', ': ',
    one.values.map((value, index) => [index ? ' · ' : '', el('span', { class: 'code' }, value.variant), ' ', value.value.text]));
}

function differences(position) {
  if (position.differences.length === 0) return el('span', { class: 'quiet' }, '–');
  const told = position.differences.filter(one => one.effect);
  const rest = position.differences.filter(one => !one.effect);
  return [
    told.length ? el('ul', { class: 'bare' }, told.map(difference)) : null,
    rest.length ? el('details', null, el('summary', null, `${count(rest.length, 'difference')} that no rule speaks of`), el('ul', { class: 'bare' }, rest.map(difference))) : null,
  ];
}

const statusMarks = { 'shared': '=', 'differs': '≠', 'only-on-some': '±', 'not-known': '?' };

function table(caption, positions, variants) {
  return ruled(caption, ['Position', 'Status', ...variants.map(code => variantName(shown, code)), 'Goes across', 'Differs in'], positions.map(position => [
    position.name,
    el('span', { class: 'status', 'data-status': position.status }, el('b', { 'aria-hidden': 'true' }, statusMarks[position.status]), ` ${say('status', position.status)}`),
    ...position.fitted.map(fitted),
    position.across.length ? el('ul', { class: 'bare' }, position.across.map(across)) : '–',
    differences(position),
  ]), { className: 'restack compared' });
}

function counts({ shared, differs, onlyOnSome, notKnown, stoppers }) {
  return el('ul', { class: 'tally' }, [
    [shared, 'shared', '='], [differs, 'differ', '≠'], [onlyOnSome, 'only on some', '±'], [notKnown, 'not known', '?'], [stoppers, 'stoppers: a part of one does not fit another', '×'],
  ].map(([many, name, mark]) => el('li', null, el('b', null, many), el('span', null, el('span', { 'aria-hidden': 'true' }, `${mark} `), name))));
}

function render(answer) {
  const { asked, positions } = answer;
  const names = asked.variants.map(code => variantName(shown, code));
  const groups = [...new Set(positions.map(position => position.group))];
  const narrowed = [asked.group ? `only ${plain(asked.group)}` : '', asked.show === 'all' ? '' : `only ${asked.show}`].filter(Boolean).join(', ');
  return {
    title: names.join(' and '),
    summary: `${names.join(', ')}${narrowed ? `; ${narrowed}` : ''}.`,
    said: `${count(answer.counts.shared, 'position')} shared, ${answer.counts.differs} differ, ${count(answer.counts.stoppers, 'stopper')}.`,
    content: [
      el('section', { class: 'headline' }, el('h2', { 'data-first': true, tabindex: '-1' }, `${count(answer.counts.shared, 'position')} shared, ${answer.counts.differs} differ`), counts(answer.counts),
        el('p', { class: 'small quiet' }, 'Counted over every position of the choice of group, whatever is shown. “Goes across” judges what one variant has on another; each verdict leads to its reasons.')),
      positions.length === 0 ? el('p', { class: 'notice' }, 'No position is left with this choice of what to show.') : null,
      groups.map(one => section(sentence(plain(one)), table(`${sentence(plain(one))}: what each variant has`, positions.filter(position => position.group === one), asked.variants))),
      addresses(answer),
    ],
  };
}

bind({
  prepare: async query => showFamily(await offerFamilies(family, query.get('family')), query.get('variants')?.split(',')),
  toApi: query => (query.size ? `/api/compare?${query}` : null),
  render,
  empty: () => el('p', { class: 'quiet' }, 'Tick the variants to lay side by side.'),
});
