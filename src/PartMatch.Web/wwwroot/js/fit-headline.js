// The head of a fit answer: the verdict in large, and beside it what somebody with the part in hand wants to know first.

import { positionName, variantName } from './choices.js';
import { outcomeWords } from './fit-findings.js';
import { partsOf } from './fit-reasons.js';
import { address, count, danger, el, facts, linked, meaningOfSureness, partLink, say, sentence, sentences, sureness, verdictShape } from './format.js';

const axisOf = { 'does-not-fit': 'mounts', 'fits-with-work': 'mounts', 'mounts-but-runs-differently': 'runs', 'fits': 'mounts' };
const weight = ['nuisance', 'loss', 'damage', 'injury'];

const axisThatCarries = answer => axisOf[answer.headline] ?? (answer.mounts.value === 'not-known' ? 'mounts' : 'runs');

const worstFirst = reasons => reasons.toSorted((a, b) => weight.indexOf(b.consequence) - weight.indexOf(a.consequence));

/** The reason that carries the headline: of those that decided its axis the unmet one of worst consequence. */
function decisive(answer) {
  const axis = axisThatCarries(answer);
  const deciding = answer.reasons.filter(reason => answer[axis].decidedBy.includes(reason.id));
  const pool = deciding.length ? deciding : answer.reasons.filter(reason => reason.axis === axis);
  const wanted = answer.headline === 'fits' ? 'yes' : answer.headline === 'not-known-yet' ? 'not-known' : 'no';
  const fitting = pool.filter(reason => reason.met === wanted);
  return worstFirst(fitting.length ? fitting : pool)[0];
}

/** What the records say to the same effect, where somebody found it: why it is so. */
function alsoReckoned(answer) {
  const axis = axisThatCarries(answer);
  if (!['does-not-fit', 'fits-with-work', 'mounts-but-runs-differently'].includes(answer.headline)) return undefined;
  return worstFirst(answer.reasons.filter(reason => reason.axis === axis && reason.met === 'no' && reason.effect && reason.by !== 'finding'))[0];
}

/** Sentences of the server name the reference by its code; here it has its name. */
export const inWords = (text, answer, family) => text.replaceAll(answer.reference, named(answer.reference, family));

export const named = (reference, family) => reference.replace(/^\S+/, code => variantName(family, code));

/** A finding in short: what was tried and what was seen. Who says so stands where it is told whole. */
function inShort({ text, note }) {
  const [tried] = text.split('. ', 1);
  return note ? `${tried}. ${sentences(sentence(note))}` : `${tried}.`;
}

/** Where equally good findings disagree, each of them: none speaks for the answer alone. */
function bothSides(answer) {
  const { disputed, decidedBy } = answer[axisThatCarries(answer)];
  const codes = answer.reasons.filter(reason => decidedBy.includes(reason.id) && reason.by === 'finding').map(reason => reason.code);
  const found = answer.findings.filter(finding => codes.includes(finding.code));
  return disputed && found.length > 1 ? found.map(finding => `${outcomeWords(finding)}: ${finding.note ?? inShort(finding)}`).map(sentences).join(' ') : '';
}

/** The comparison, and what it leads to, where the reason says so in a sentence of its own; where two parts mate, that sentence is the rule. */
function parts({ text, by, code }, answer) {
  const finding = by === 'finding' && answer.findings.find(one => one.code === code);
  if (finding) return [inShort(finding), ''];
  const cut = by === 'joint' ? -1 : text.search(/\. (?=\S)/);
  return cut < 0 ? [sentence(text), ''] : [sentence(text.slice(0, cut + 1)), sentence(text.slice(cut + 2))];
}

function whatThen(answer, outcome) {
  const cost = answer.consequence ? `At worst: ${say('consequence', answer.consequence)}.` : '';
  const ends = outcome && !/[.!?]$/.test(outcome) ? '.' : '';
  if (outcome || cost) return [outcome ? [linked(outcome + ends), ' '] : '', cost];
  if (answer.headline === 'not-known-yet') return 'Nothing is ruled in or out until the open points are read.';
  return 'Nothing recorded speaks of harm.';
}

/** The cheapest reading that would settle something, in words. */
export function nextStep(step, family) {
  const where = step.on === 'part' ? 'on the part' : `on the engine${step.position ? `, ${positionName(family, step.position)}` : ''}`;
  return `${step.name} ${where}: ${say('method', step.check)}, ${step.minutes} min`;
}

export const isNothing = answer => answer.asked.part === 'none';

function tellApart(answer) {
  if (answer.identity.relation === 'unknown-number') {
    const all = el('a', { href: address('look-alikes.html', { number: answer.asked.number, family: answer.asked.family }) }, 'all of them, with their danger');
    return answer.nearestNumbers.length
      ? ['The nearest known numbers: ', answer.nearestNumbers.flatMap(({ number, part }, index) => [index ? ', ' : '', partLink(part, number)]), ': ', all, '.']
      : 'No known number is written nearly so.';
  }

  if (isNothing(answer)) return '';
  if (!answer.lookAlikes.length) return 'No number or part recorded here can be taken for it.';
  const [worst] = answer.lookAlikes;
  const which = answer.identity.fitted.includes(worst.part) ? ' (the one the maker fitted here), the mix-up is ' : ', ';
  return [partLink(worst.part), ` ${worst.name}${which}`, danger(worst.danger), ': ', worst.tellApart ?? 'nothing recorded separates them', '. ', linked(worst.dangerText), ' ',
    el('a', { href: address('tell-apart.html', { parts: answer.asked.part }) }, 'Tell them apart before paying'), ', or see ',
    el('a', { href: address('look-alikes.html', { number: answer.asked.part, family: answer.asked.family }) }, count(answer.lookAlikes.length, 'look-alike')), '.'];
}

export function fittedParts({ identity: { fitted } }) {
  return fitted.flatMap((part, index) => (index ? [', ', partLink(part)] : [partLink(part)]));
}

const isSaidAlready = ({ identity: { relation, fitted } }) => fitted.length === 0 || ['fitted-here', 'same-both-ways'].includes(relation);

/** A verdict is as sure as the weaker of its axes; where they differ both are said, so that a sure "differently" is not read as a guess. */
function howSure({ sureness: whole, surenessText, mounts, runs, headline }) {
  const says = (value, meaning = meaningOfSureness(value)) => [sureness(value), ` – ${meaning}`];
  return headline === 'does-not-fit' || mounts.sureness === runs.sureness ? says(whole, surenessText)
    : [el('div', null, `Mounts ${say('mounts', mounts.value)}: `, says(mounts.sureness)), el('div', null, `Runs ${say('runs', runs.value)}: `, says(runs.sureness))];
}

/** The head of the answer: verdict, why, what then, how to tell apart, how sure. */
export function head(answer, family) {
  const reason = decisive(answer);
  const [why, outcome] = reason ? parts({ ...reason, text: inWords(reason.text, answer, family) }, answer) : ['No feature, joint or finding that speaks of it is recorded.', ''];
  const records = reason?.by === 'finding' ? alsoReckoned(answer) : undefined;
  const [compared, harm] = records ? parts({ ...records, text: inWords(records.text, answer, family) }, answer) : ['', ''];
  const [next] = answer.measureNext;
  const outside = answer.reasons.find(one => one.code === 'outside-variant');
  return el('section', { class: 'headline', 'data-headline': answer.headline },
    el('h2', { 'data-first': true, tabindex: '-1' }, verdictShape(answer.headline), el('span', null, answer.headlineText)),
    outside ? el('p', { class: 'notice' }, inWords(outside.text, answer, family)) : null,
    el('p', { class: 'why' }, linked(bothSides(answer) || why, reason && partsOf(reason))),
    facts([
      ['What happens then', whatThen(answer, outcome || harm)],
      ['Settle it first by', next ? `${sentence(nextStep(next, family))}.` : ''],
      ['The maker fitted', isSaidAlready(answer) ? '' : fittedParts(answer)],
      ['Telling apart', tellApart(answer)],
      ['The records say so too', compared ? linked(compared, partsOf(records)) : ''],
      ['How sure', howSure(answer)],
    ]));
}
