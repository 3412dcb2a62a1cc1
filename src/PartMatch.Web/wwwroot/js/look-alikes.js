// Look-alikes: what a number can be taken for, how dangerous that is, and how to tell them apart.

import { familyOf, offerFamilies, positionName, variantName } from './choices.js';
import { address, count, danger, el, facts, linked, partLink, ruled, say, sentence, verdict } from './format.js';
import { addresses, bind, drawStrip } from './page.js';

const form = document.querySelector('form[data-question]');
const { family } = form.elements;

drawStrip();

/** A number key with the characters marked in which it differs; what is missing shows as an open box. */
function marked(key, places) {
  const nodes = [];
  let end = 0;
  for (const { index, length } of places) {
    nodes.push(key.slice(end, index), length ? el('mark', null, key.slice(index, index + length)) : el('mark', { class: 'gap', title: 'nothing here' }, '␣'));
    end = index + length;
  }
  return el('span', { class: 'number key' }, nodes, key.slice(end));
}

/** Both keys, one above the other, with `at` marked in each. */
function sideBySide(askedKey, other) {
  const otherKey = other.number.toUpperCase().replace(/[^\p{L}\p{N}]/gu, '');
  let shift = 0;
  const inOther = other.near.at.map(({ index, asked, other: text }) => {
    const place = { index: index + shift, length: text.length };
    shift += text.length - asked.length;
    return place;
  });
  return el('div', { class: 'keys' },
    el('div', null, el('span', { class: 'quiet small' }, 'asked '), marked(askedKey, other.near.at.map(({ index, asked }) => ({ index, length: asked.length })))),
    el('div', null, el('span', { class: 'quiet small' }, 'other '), marked(otherKey, inOther)));
}

function spelled({ at }) {
  return at.map(({ index, asked, other }) => (asked === '' ? `place ${index + 1}: ${other} added` : other === '' ? `place ${index + 1}: ${asked} missing` : `place ${index + 1}: ${asked} reads ${other}`)).join('; ');
}

async function worst(place) {
  if (!place) return null;
  const known = place.family ? await familyOf(place.family).catch(() => null) : null;
  return el('a', { class: 'across', href: address('fit.html', { family: place.family, variant: place.variant, position: place.position, part: place.part }) },
    verdict(place.headline), el('span', null, ` as ${positionName(known, place.position)} of ${variantName(known, place.variant)}`));
}

function checks(title, list) {
  return list.length === 0 ? null : [el('h4', null, title), el('ol', null, list.map(check =>
    el('li', null, `${sentence(check.name)} – ${say('method', check.check)}, ${check.minutes} min.`, check.how ? ` ${sentence(check.how)}.` : '')))];
}

async function candidate(answer, other) {
  const place = await worst(other.worst);
  return el('article', { class: 'candidate' },
    el('h3', null, partLink(other.part, other.number), el('span', null, ` ${other.name ?? 'a part of no family here'}`), danger(other.danger)),
    other.near ? sideBySide(answer.asked.numberKey, other) : null,
    facts([
      ['It is', [say('relation', other.relation), other.relationText ? [' – ', linked(other.relationText)] : '']],
      ['Near', other.near ? `${count(other.near.edits, 'edit')}, ${other.near.class ? say('mixUp', other.near.class) : 'the same key'} (${spelled(other.near)})` : 'not in number'],
      ['To the eye', other.sameToTheEye ? 'the same in everything a photo or the eye shows' : 'not recorded as the same'],
      ['Danger', linked(other.dangerText)],
      ['Worst place', place],
    ]),
    other.differs.length ? ruled(`Where ${other.number} differs`, ['Feature', 'The one asked', 'The other', 'Matters'], other.differs.map(one => [sentence(one.name), one.asked, one.other, one.matters ? 'yes' : 'no']), { className: 'restack' }) : null,
    el('p', { class: 'tell' }, linked(other.tellApartText)),
    checks('Before paying: ask the seller', other.tellApart.filter(check => check.beforePaying)),
    checks('In hand', other.tellApart.filter(check => !check.beforePaying)));
}

function more(answer) {
  return answer.cursor ? el('p', null, el('a', { class: 'button', href: address('look-alikes.html', { number: answer.asked.number, family: answer.asked.family, cursor: answer.cursor }) }, 'The next ones')) : null;
}

async function render(answer) {
  const { asked, known, lookAlikes } = answer;
  const dangerous = lookAlikes.filter(other => other.danger !== 'none').length;
  const heading = answer.total === 0 ? 'Nothing recorded can be taken for it' : `${count(answer.total, 'look-alike')}${answer.cursor ? '' : `, ${dangerous === 0 ? 'none of them dangerous' : `${dangerous} dangerous`}`}`;
  return {
    title: `${asked.number}: look-alikes`,
    summary: `${asked.number}${asked.family ? `, danger judged in ${family.selectedOptions[0].text}` : ''}.`,
    said: `${heading}.`,
    content: [
      el('section', { class: 'headline' }, el('h2', { 'data-first': true, tabindex: '-1' }, heading),
        el('p', null, el('span', { class: 'number' }, asked.number), known.length ? [' is ', known.map((part, index) => [index ? ' or ' : '', partLink(part.part), ` ${part.name ?? ''}`])] : ' is in no book here: what follows are the nearest known numbers.'),
        el('p', { class: 'small quiet' }, `Every number within ${count(answer.within, 'edit')} of it is listed${answer.complete ? '; none is missing' : '; the list is not complete'}, and parts of the kind that the eye cannot tell from it. Danger is how easily the two are mixed up (1–3) times the harm of the mix-up (0–5).`)),
      await Promise.all(lookAlikes.map(other => candidate(answer, other))),
      more(answer),
      addresses(answer),
    ],
  };
}

function toApi(query) {
  if (query.size === 0) return null;
  const rest = new URLSearchParams(query);
  rest.delete('number');
  return `/api/numbers/${encodeURIComponent(query.get('number') ?? ' ')}/look-alikes${rest.size ? `?${rest}` : ''}`;
}

bind({
  prepare: query => offerFamilies(family, query.get('family'), 'every family'),
  toApi,
  render,
  empty: () => el('p', { class: 'quiet' }, 'Write a number as it stands in a listing or on the part.'),
});
