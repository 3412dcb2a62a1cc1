// What the sheets of injectors and of the fuel supply share: the goal, how it is prefilled, and how sums are shown.

import { askOnce, newest } from './api.js';
import { familyShower, offerFamilies, offerVariants } from './choices.js';
import { fold } from './fold.js';
import { address, count, el, linked, partLink, plain, ruled, section, sentence } from './format.js';
import { tellSet } from './page.js';

/** The fields that both sheets ask with: a link from one to the other keeps the question. */
const goal = [
  'family', 'variant', 'power', 'speed', 'boost', 'pressure', 'supply', 'rail-table', 'duty', 'fuel', 'ethanol', 'fuel-temperature', 'bsfc', 'dead-time', 'voltage', 'shots', 'cylinders',
  'injectors-per-cylinder', 'staged-with',
];

/** The other sheet with the same goal. */
export const sameGoal = (page, query, more = {}) => address(page, { ...Object.fromEntries(goal.map(name => [name, query.get(name)])), ...more });

const known = ['family', 'variant', 'injector', 'pump'];

/** Nothing is asked yet by an address that only names an engine and its parts. */
export const asks = query => [...query.keys()].some(name => !known.includes(name));

// What the base records of an engine, in the field that asks for it.
const recorded = { 'power': 'rated-power', 'speed': 'rated-speed', 'boost': 'boost', 'pressure': 'rail-pressure', 'supply': 'supply', 'fuel': 'fuel' };

const ofVariant = newest();

/** Puts what is recorded of the chosen variant into fields that nobody has touched: a start, to be written over. */
const prefill = form => ofVariant(async () => {
  const { family, variant } = form.elements;
  return family.value && variant.value ? (await askOnce(`/api/families/${encodeURIComponent(family.value)}/variants/${encodeURIComponent(variant.value)}`)).engine : [];
}, engine => {
  for (const [name, property] of Object.entries(recorded)) {
    const control = form.elements[name];
    const untouched = ['', control.dataset.filled, control.dataset.standard, control.dataset.proposal].includes(control.value);
    const text = engine.find(fact => fact.property === property)?.text.replace(/ *[±+−-] *[0-9.]+(?= |$)/g, '').replace(/ 1\/min$/, '/min');
    if (!untouched || text === undefined) continue;
    control.value = text;
    control.dataset.filled = text;
  }
  tellSet(form);
});

/** Makes the choices of family and variant ready and fills in what is recorded; gives what a page needs of them. */
export function goalForm(form) {
  const { family, variant } = form.elements;
  const state = { shown: null };
  const ofFamily = familyShower();
  const showFamily = code => ofFamily(code, found => {
    state.shown = found;
    offerVariants(variant, found, '');
  });

  form.addEventListener('change', async event => {
    if (event.target === family) await showFamily(family.value);
    if (event.target === family || event.target === variant) await prefill(form);
  });
  return {
    state,
    /** What the form calls a choice, within a sentence. */
    words: (name, value) => [...form.elements[name].options].find(option => option.value === value)?.text.replace(/^[A-Z](?=[a-z])/, letter => letter.toLowerCase()) ?? plain(value),
    prepare: async query => showFamily(await offerFamilies(family, query.get('family'))),
    opened: async () => { if (!asks(new URLSearchParams(location.search))) await prefill(form); },
  };
}

/** Low, expected and high of a range as three cells; the text holds them with one unit. */
export function three(range) {
  const [, ...found] = /^(\S+) … (\S+) … (\S+) (.*)$/.exec(range.text) ?? [];
  if (found.length === 4) return found;
  const [, number, unit] = /^(\S+) (.*)$/.exec(range.text) ?? ['', range.text, ''];
  return ['', number, '', unit];
}

export function rangeRow(name, range) {
  const [low, expected, high, unit] = three(range);
  return [name, low, el('strong', null, expected), high, unit];
}

const enough = { 'yes': ['✚', 'enough'], 'no': ['−', 'not enough'], 'not-known': ['?', 'perhaps'] };

/** `isOpen`: nothing is known of it, so not even perhaps. */
export function enoughMark(value, isOpen = false) {
  const [mark, words] = isOpen ? ['?', 'not known'] : enough[value];
  return el('span', { class: 'status' }, el('b', { 'aria-hidden': 'true' }, mark), ` ${words}`);
}

export function working(steps) {
  return el('ol', { class: 'working' }, steps.map(step => el('li', null,
    el('div', null, el('strong', null, sentence(step.what)), ' = ', step.formula), el('div', { class: 'number' }, `= ${step.with}`), el('div', { class: 'number result' }, `= ${step.result}`), el('div', { class: 'quiet small' }, linked(step.source)))));
}

/** The sums of one part, folded, with what else is folded away; on paper those that decide. */
export const ownSums = (steps, of, { more = [], onPaper = false } = {}) => (steps.length ? el('details', { class: onPaper ? 'sums on-paper' : 'sums' }, el('summary', null, 'Its sums', el('span', { class: 'unseen' }, ` of ${of.replace(/^[^:]*:/, '')}`)), more, working(steps)) : null);

/** The two inputs that matter most, and the others folded. */
export function influences(answer, result) {
  if (answer.influences.length === 0) return null;
  const [most, next, ...others] = answer.influences.map(one => one.text);
  return section('What matters most', el('p', null, `Of all that is not known exactly, these two move ${result} most, each alone with the others as expected:`),
    el('ol', null, [most, next].filter(Boolean).map(text => el('li', null, sentence(text)))),
    others.length ? el('details', { class: 'on-paper' }, el('summary', null, 'The others'), el('ul', null, others.map(text => el('li', null, sentence(text))))) : null);
}

const names = {
  'bsfc': 'specific consumption', 'density': 'density of the fuel', 'rated-density': 'density of the rated fluid', 'line-loss': 'loss of line and filter', 'return': 'return to the tank',
  'lambda': 'mixture against stoichiometric (lambda)', 'pressure': 'fuel pressure', 'boost': 'boost, over ambient', 'duty': 'highest duty',
};

export const assumed = list => ruled('Assumed figures and where they come from', ['Figure', 'Low … expected … high', 'Source'],
  list.map(one => [sentence(names[one.name] ?? plain(one.name)), one.range.text, linked(one.source)]), { className: 'restack' });

/** What stands of the fuels that a part is recorded for. */
export const wetted = { 'recorded': 'Recorded for this fuel.', 'not-known': 'What fuels it stands is not recorded.', 'other-fuels': 'Recorded for other fuels, not for this one.' };

/** The boost of the goal, and whether it is the recorded one. */
export const boostTaken = ({ asked, assumed: taken }) => `${asked.boost.text}${taken.some(one => one.name === 'boost') ? `: ${taken.find(one => one.name === 'boost').source}` : ''}`;

/** What the consumption is and where it comes from: nothing moves the answer more. */
export const consumption = ({ assumed: taken }) => taken.filter(one => one.name === 'bsfc').flatMap(one => [`${one.range.text}: `, ...linked(one.source)]);

/** What low and high mean, said where ranges are read. */
export const meaning = answer => el('p', { class: 'quiet small' }, answer.ranges);

/** The last sheets of a sum, folded: what it rests on, its working, and that of the first in the list. */
export const grounds = (answer, first) => [
  fold('What was assumed', count(answer.assumed.length, 'figure'), assumed(answer.assumed)), fold('The working', count(answer.working.length, 'step'), working(answer.working)),
  first?.working.length ? fold('The working of the first', `${first.part.replace(/^[^:]*:/, '')}, ${count(first.working.length, 'step')}`, el('p', null, partLink(first.part), ` ${first.name}`), working(first.working)) : null,
];

export const flags = (answer, parts = []) => (answer.warnings.length ? el('div', { class: 'notice' }, el('ul', null, answer.warnings.map(warning => el('li', null, linked(warning.text, parts))))) : null);

export const cautions = answer => section('Cautions', answer.cautions.length ? el('ul', { class: 'cautions' }, answer.cautions.map(caution => el('li', null, caution.text))) : null);
