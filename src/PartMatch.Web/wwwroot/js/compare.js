// Compare variants: position by position, what they share and what goes across.

import { familyShower, offerFamilies, offerGroups, variantName } from './choices.js';
import {
  count, el, headlines, pageOf, partLink, plain, ruled, say, section, sentence, spanText, sureness, surenessLegend, verdict, verdictShape,
} from './format.js';
import { addresses, bind, drawStrip } from './page.js';
import { sumLink, sumName, swapLink } from './sum-links.js';

const form = document.querySelector('form[data-question]');
const { family, group } = form.elements;
let shown = null;

drawStrip();

const ofFamily = familyShower();
const showFamily = (code, chosen) => ofFamily(code, found => {
  shown = found;
  offerGroups(group, shown, '');
  document.getElementById('variants').replaceChildren(...(shown?.variants ?? []).map(variant => el('label', { class: 'choice' },
    el('input', { type: 'checkbox', name: 'variants', value: variant.variant, 'data-join': ',', id: `variant-${variant.variant}`, checked: chosen?.includes(variant.variant) }), ` ${variant.name}`)));
});

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
  return el('li', null, el('a', { class: 'across', href: pageOf(pair.fit) }, el('span', { class: 'code' }, `${pair.from} → ${pair.to}`),
    verdict(pair.headline, { short: true }), sureness(pair.sureness)));
}

/** What one variant has, on each of the others: a line of shapes, each named for who cannot see it. */
function onOthers(from, pairs) {
  return el('li', { class: 'onto' }, el('span', { class: 'code' }, `${from} on`), pairs.map(pair => {
    const words = `${from} on ${pair.to}: ${headlines[pair.headline]}, ${pair.sureness}`;
    return el('a', { class: 'across', href: pageOf(pair.fit), title: words, 'aria-label': words, 'data-headline': pair.headline },
      el('span', { class: 'code' }, pair.to), verdictShape(pair.headline), sureness(pair.sureness, { short: true }));
  }));
}

/** Two variants in words; more as a line for each giver. A variant that carries nothing has no part to judge. */
function goesAcross(position) {
  const givers = position.fitted.filter(state => state.state !== 'none').map(state => state.variant);
  if (givers.length === 0) return el('span', { class: 'quiet' }, 'nothing to carry across');
  const pairs = position.across.filter(pair => givers.includes(pair.from));
  return el('ul', { class: 'bare' }, position.fitted.length === 2 ? pairs.map(across) : givers.map(from => onOthers(from, pairs.filter(pair => pair.from === from))));
}

/** Where a sum speaks of what differs: for each variant as built, and between two with the one's part in the other. */
function sumsOf(position) {
  const name = sumName(shown, position.position);
  if (position.status !== 'differs' || !name) return null;
  const built = position.fitted.map(({ variant }) => sumLink(shown, position.position, { variant, text: variant }));
  const swapped = position.fitted.length > 2 ? [] : position.across.map(({ from, to }) => {
    const [part, ...others] = position.fitted.find(state => state.variant === from)?.parts ?? [];
    return part && others.length === 0 ? swapLink(shown, position.position, { variant: to, part: part.part, text: `${from} → ${to}` }) : null;
  }).filter(Boolean);
  return el('div', { class: 'small' }, `${name}: `, [...built, ...swapped].map((link, index) => [index ? ' · ' : '', link]));
}

function legend() {
  return el('p', { class: 'legend small' }, Object.keys(headlines).map(headline => verdict(headline)));
}

const effects = { stops: 'stops mounting', work: 'needs work', alters: 'alters running' };

function valueOf(difference, variant) {
  return difference.values.find(value => value.variant === variant)?.value.text ?? el('span', { class: 'quiet' }, '–');
}

function featureRow(difference, variants) {
  const means = [effects[difference.effect], difference.same === 'not-known' ? 'not known to agree' : ''].filter(Boolean).join(', ');
  return { class: 'feature', cells: [[sentence(difference.name), means ? el('span', { class: 'effect' }, ` (${means})`) : ''], ...variants.map(variant => valueOf(difference, variant))] };
}

function silent(list, variants) {
  return el('details', null, el('summary', null, `${count(list.length, 'more difference', 'more differences')} that no rule speaks of`),
    el('ul', { class: 'bare' }, list.map(one => el('li', null, `${sentence(one.name)}: `, variants.map((variant, index) => [index ? ' · ' : '', el('span', { class: 'code' }, variant), ' ', valueOf(one, variant)])))));
}

const statusMarks = { 'shared': '=', 'differs': '≠', 'only-on-some': '±', 'not-known': '?' };

function status(code) {
  return el('span', { class: 'status' }, el('b', { 'aria-hidden': 'true' }, statusMarks[code]), ` ${say('status', code)}`);
}

/** The position with its parts and verdicts; below it, one row for each feature in which they differ. */
function rowsOf(position, variants) {
  const told = position.differences.filter(one => one.effect);
  const rest = position.differences.filter(one => !one.effect);
  const rows = [...told.map(one => featureRow(one, variants)), ...(rest.length ? [{ class: 'feature silent', cells: [{ cell: silent(rest, variants), colspan: variants.length + 1 }] }] : [])];
  return [{ class: 'place', cells: [[position.name, status(position.status), sumsOf(position)], ...position.fitted.map(fitted), { cell: goesAcross(position), rowspan: rows.length + 1 }] }, ...rows];
}

function table(caption, positions, variants) {
  return ruled(caption, ['Position', ...variants.map(code => variantName(shown, code)), 'Goes across'], positions.flatMap(position => rowsOf(position, variants)), { className: 'restack compared' });
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
        el('p', { class: 'small quiet' }, 'The counts are over every position, whatever is shown below. “Goes across” judges what one variant has on another; each verdict leads to its reasons.')),
      asked.variants.length > 2 ? legend() : null,
      positions.length ? surenessLegend() : null,
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
