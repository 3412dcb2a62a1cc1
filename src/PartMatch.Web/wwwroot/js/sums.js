// What the sheets of timing and compression share: parts to choose by role, what is recorded beside a field, tables of a sum.

import { askOnce, newest } from './api.js';
import { familyOf, offerVariants } from './choices.js';
import { fold, foldNarrow } from './fold.js';
import { count, el, linked, pageOf, partLink, plain, ruled, section, sentence, verdict } from './format.js';
import { choose } from './page.js';

const option = (value, text) => el('option', { value }, text);

async function partsOfKind(family, kind) {
  const { rows } = await askOnce(`/api/books/${encodeURIComponent(family)}/parts?where=kind:${encodeURIComponent(kind)}&limit=1000`);
  return rows.map(({ row }) => row);
}

/** Whether a family has a position of that role. */
export const hasRole = (family, role) => (family?.positions ?? []).some(position => position.role === role);

/** The catalogue's parts for a role, each position under its name. */
const partsOfRole = (family, role) => Promise.all((family?.positions ?? []).filter(position => position.role === role).map(async position =>
  el('optgroup', { label: position.name }, (await partsOfKind(family.family, position.kind)).map(row => option(row.part, `${row.part.replace(/^[^:]*:/, '')} – ${row.name ?? plain(position.kind)}`)))));

function offerParts(select, groups) {
  const kept = select.value;
  select.replaceChildren(option('', 'as the maker fitted it'), ...groups);
  choose(select, kept);
}

const ofFamily = newest();

/** Offers a family's variants, and for each list with `data-role` its parts, in one go; `show` gets the family. */
export const offerFamily = (form, code, show) => ofFamily(async () => {
  const family = code ? await familyOf(code) : null;
  const lists = [...form.querySelectorAll('select[data-role]')];
  return { family, offers: await Promise.all(lists.map(async select => [select, await partsOfRole(family, select.dataset.role)])) };
}, ({ family, offers }) => {
  offerVariants(form.elements.variant, family, '');
  for (const [select, groups] of offers) offerParts(select, groups);
  show(family);
});

const ofVariant = newest();

/** Writes beside each field with `data-recorded` what is recorded of the variant. */
export const showRecorded = (form, family, variant) => ofVariant(async () =>
  (family && variant ? (await askOnce(`/api/families/${encodeURIComponent(family)}/variants/${encodeURIComponent(variant)}`)).engine : []), facts => {
  for (const hint of form.querySelectorAll('[data-recorded]')) {
    const fact = facts.find(one => one.property === hint.dataset.recorded);
    hint.textContent = fact ? `Recorded: ${fact.text}.` : variant ? 'Not recorded: give it if it is known.' : 'As recorded when left empty.';
  }
});

const written = control => (control.tagName === 'SELECT' ? control.selectedOptions[0]?.text : control.value.trim());

/** Everything that is filled in, in the order of the form, but what `said` says already. */
export function askedFor(form, said) {
  const filled = [...form.querySelectorAll('[name]:not(:disabled)')].filter(control => !said.includes(control.name) && control.value.trim() !== '');
  return filled.map(control => `; ${plainLabel(control)}: ${written(control)}`).join('');
}

const plainLabel = control => (control.labels[0]?.textContent ?? control.name).toLowerCase();

/** On paper, where an answer comes from and of which day it is. */
export const printed = () => el('p', { class: 'printed small' }, `${location.href}, ${new Date().toISOString().slice(0, 10)}`);

/** The sums, in order, for a pencil. */
export function workingSection(steps) {
  return fold('The working', count(steps.length, 'step'), el('ol', { class: 'working' }, steps.map(step => el('li', null,
    el('div', null, el('strong', null, sentence(step.what)), ' = ', step.formula), el('div', { class: 'number' }, `= ${step.with}`), el('div', { class: 'number result' }, `= ${step.result}`),
    el('div', { class: 'quiet small' }, linked(step.source))))));
}

/** What it was reckoned with. */
export function partsSection(parts) {
  return foldNarrow('Reckoned with', parts.map(part => part.name).join('; '), ruled('Parts of this sum', ['Part', 'Sits as', 'Will it fit'], parts.map(part => [
    [partLink(part.part), el('div', { class: 'plain-name' }, part.name)], sentence(plain(part.position)),
    part.isFitted ? 'the maker fitted it here' : el('a', { class: 'across', href: pageOf(part.fit) }, verdict(part.headline, { short: true })),
  ]), { className: 'restack' }));
}

/** For the head of an answer: a sum holds for a part whether it goes on or not, so that is said with it. */
export const willItFit = parts => parts.filter(part => !part.isFitted).map(part =>
  ['Will it fit', [partLink(part.part), ': ', el('a', { class: 'across', href: pageOf(part.fit) }, verdict(part.headline))]]);

/** The family’s own variants as a yardstick. */
export function variantsSection(variants, asked) {
  if (!variants.some(one => one.trapped)) return null;
  const text = range => range?.text ?? 'not known';
  return foldNarrow('Beside the family’s own variants', 'compression, overlap, trapped, each as built',
    el('p', { class: 'quiet small' }, 'The last column is the pressure at the end of compression of the engine asked about ÷ that of the variant as built, from the same pressure when the valve closes, exponent 1.25 … 1.35. '
      + 'It compares like with like only on the same fuel and boost, and does not predict knock.'),
    ruled('Each as its maker built it, valves at 1 mm', ['Variant', 'Fuel and boost', 'Compression', 'Intake closes', 'Overlap', 'Trapped', 'End-of-compression pressure'], variants.map(one => [
      [one.name, one.variant === asked ? el('div', { class: 'quiet small' }, 'asked about, as built') : null],
      [`${one.fuel ? plain(one.fuel) : 'fuel not recorded'}, ${one.boost ?? 'boost not recorded'}`, el('div', { class: 'quiet small' }, { 'yes': 'the same', 'no': 'not the same', 'not-known': 'not known whether the same' }[one.charge])],
      text(one.compressionRatio), text(one.intakeCloses), text(one.overlap), text(one.trapped), one.endOfCompression ? `× ${one.endOfCompression.text}` : 'not known',
    ]), { className: 'restack' }));
}

export const assumedSection = assumed => fold('What was taken as true', count(assumed.length, 'figure'), ruled('Figures and where they come from', ['Figure', 'Low … expected … high', 'Source'],
  assumed.map(one => [sentence(plain(one.name)), one.range.text, linked(one.source)]), { className: 'restack' }));

export const cautionsSection = cautions => section('Cautions', cautions.length ? el('ul', { class: 'cautions' }, cautions.map(caution => el('li', null, caution.text))) : null);

export const warningsNotice = warnings => (warnings.length ? el('div', { class: 'notice' }, el('ul', null, warnings.map(warning => el('li', null, warning.text)))) : null);

/** The two inputs that matter most for the main result. */
export const mattersMost = influences => (influences.length ? influences.slice(0, 2).map(one => sentence(one.text)).join('; ') : 'nothing: every input is exact');

/** What differs from the variant as built, in a sentence's end. */
export const differences = answer => (answer.changes.length ? `${answer.changes.join(', ')}.` : 'no difference that these sums see.');
