// What one number can be taken for: each look-alike with its danger, where it differs, and how to tell it apart.

import { familyOf, positionName, variantName } from './choices.js';
import { address, count, danger, el, facts, linked, pageOf, partLink, ruled, say, sentence, sentences, sureness, verdict } from './format.js';
import { sideBySide } from './look-alike-marks.js';
import { addresses } from './page.js';

function spelled({ at }) {
  return at.map(({ index, asked, other }) => (asked === '' ? `place ${index + 1}: ${other} added` : other === '' ? `place ${index + 1}: ${asked} missing` : `place ${index + 1}: ${asked} reads ${other}`)).join('; ');
}

/** The place where the mix-up does most harm, leading to its reasons. */
export async function worst(place) {
  if (!place) return null;
  const known = place.family ? await familyOf(place.family).catch(() => null) : null;
  return el('a', { class: 'across', href: address('fit.html', { family: place.family, variant: place.variant, position: place.position, part: place.part }) },
    verdict(place.headline), sureness(place.sureness), el('span', null, ` as ${positionName(known, place.position)} of ${variantName(known, place.variant)}`));
}

function checks(title, list) {
  return list.length === 0 ? null : [el('h4', null, title), el('ol', null, list.map(check =>
    el('li', null, `${sentence(check.name)} – ${say('method', check.check)}, ${check.minutes} min.`, check.how ? ` ${sentence(check.how)}.` : '')))];
}

/** To the key that parts two of them, or a number from what it can be taken for. */
const keyTo = (parts, text) => el('a', { href: address('tell-apart.html', { parts: parts.join(',') }) }, text);

/** One look-alike in full. */
async function candidate(answer, other) {
  const place = await worst(other.worst);
  return el('article', { class: 'candidate' },
    el('h3', null, partLink(other.part, other.number), el('span', null, ` ${other.name ?? 'a part of no family here'}`), danger(other.danger)),
    other.near ? sideBySide(answer.asked.numberKey, other) : null,
    facts([
      ['It is', [say('relation', other.relation), other.relationText ? [' – ', linked(other.relationText)] : '']],
      ['Near', other.near ? (other.near.class ? `${count(other.near.edits, 'edit')}, ${say('mixUp', other.near.class)} (${spelled(other.near)})` : 'the same key') : 'not in number'],
      ['To the eye', other.sameToTheEye ? 'the same in everything a photo or the eye shows' : 'not recorded as the same'],
      ['Danger', linked(other.dangerText)],
      ['Worst place', place],
      ['On offer', other.offers ? el('a', { href: address('offers.html', { part: other.part }) }, `${count(other.offers, 'offer')} recorded`) : ''],
    ]),
    other.differs.length ? ruled(`Where ${other.number} differs`, ['Feature', 'The one asked', 'The other', 'Matters'], other.differs.map(one => [sentence(one.name), one.asked, one.other, one.matters ? 'yes' : 'no']), { className: 'restack' }) : null,
    el('p', { class: 'tell' }, linked(other.tellApartText), ' ', other.against && other.against !== other.part ? keyTo([other.against, other.part], ['Tell them apart', el('span', { class: 'unseen' }, ` ${other.number}`)]) : ''),
    checks('Before paying: ask the seller', other.tellApart.filter(check => check.beforePaying)),
    checks('In hand', other.tellApart.filter(check => !check.beforePaying)));
}

function more(answer) {
  return answer.cursor ? el('p', null, el('a', { class: 'button', href: address('look-alikes.html', { number: answer.asked.number, family: answer.asked.family, cursor: answer.cursor }) }, 'The next ones')) : null;
}

/** Several written forms of one key, or a mark on several parts: asked about, never taken for one. */
function written({ writtenForms, question, splitBy }) {
  if (!question) return null;
  return el('section', { class: 'notice written' }, el('p', null, el('strong', null, linked(question))),
    writtenForms.length ? el('ul', null, writtenForms.map(form => el('li', null, el('span', { class: 'number' }, form.number), ` of ${form.maker}, ${say('sort', form.sort)}: `, partLink(form.part)))) : null,
    splitBy ? el('p', null, ['Split best by: ', linked(sentences(splitBy))]) : null);
}

/** The answer to one number. `place` names the family in which the danger was judged. */
export async function lookAlikesOf(answer, place) {
  const { asked, known, lookAlikes } = answer;
  const dangerous = lookAlikes.filter(other => other.danger !== 'none').length;
  const heading = answer.total === 0 ? 'Nothing recorded can be taken for it' : `${count(answer.total, 'look-alike')}${answer.cursor ? '' : `, ${dangerous === 0 ? 'none of them dangerous' : `${dangerous} dangerous`}`}`;
  return {
    title: `${asked.number}: look-alikes`,
    summary: `${asked.number}${asked.family ? `, danger judged in ${place}` : ''}.`,
    said: `${heading}.`,
    content: [
      el('section', { class: 'headline' }, el('h2', { 'data-first': true, tabindex: '-1' }, heading),
        el('p', null, el('span', { class: 'number' }, asked.number), known.length ? [' is ', known.map((part, index) => [index ? ' or ' : '', partLink(part.part), ` ${part.name ?? ''}`])] : ` is in no book here${answer.total ? ': what follows are the nearest known numbers' : ''}.`),
        el('p', { class: 'small quiet' }, `Listed are every number within ${count(answer.within, 'edit')} of it${answer.complete ? '' : ' (as far as the list goes)'}, every part of its kind that the eye cannot tell from it, and every trap that somebody found. Danger is how easily the two are mixed up (1–3) times the harm of the mix-up (0–5).`),
        answer.tellApart ? el('p', null, el('a', { class: 'button', href: pageOf(answer.tellApart) }, known.length > 1 ? 'Tell apart what it can mean' : 'Tell it from all the dangerous ones')) : null),
      written(answer),
      await Promise.all(lookAlikes.map(other => candidate(answer, other))),
      more(answer),
      addresses(answer),
    ],
  };
}
