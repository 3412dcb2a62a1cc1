// The fit answer as a sheet: verdict, why, what then, how to tell apart; below it everything the verdict rests on.

import { positionName, variantName } from './choices.js';
import { address, count, danger, el, facts, linked, meaningOfSureness, pageOf, partLink, plain, ruled, say, section, sentence, sureness, verdict, verdictShape } from './format.js';
import { partsOf, reasonsTable } from './fit-reasons.js';
import { addresses } from './page.js';

const axisOf = { 'does-not-fit': 'mounts', 'fits-with-work': 'mounts', 'mounts-but-runs-differently': 'runs', 'fits': 'mounts' };
const weight = ['nuisance', 'loss', 'damage', 'injury'];

/** The reason that carries the headline: of those that decided its axis the unmet one of worst consequence. */
function decisive(answer) {
  const axis = axisOf[answer.headline] ?? (answer.mounts.value === 'not-known' ? 'mounts' : 'runs');
  const deciding = answer.reasons.filter(reason => answer[axis].decidedBy.includes(reason.id));
  const pool = deciding.length ? deciding : answer.reasons.filter(reason => reason.axis === axis);
  const wanted = answer.headline === 'fits' ? 'yes' : answer.headline === 'not-known-yet' ? 'not-known' : 'no';
  const fitting = pool.filter(reason => reason.met === wanted);
  return (fitting.length ? fitting : pool).toSorted((a, b) => weight.indexOf(b.consequence) - weight.indexOf(a.consequence))[0];
}

/** Sentences of the server name the reference by its code; here it has its name. */
const inWords = (text, answer, family) => text.replaceAll(answer.reference, named(answer.reference, family));

const named = (reference, family) => reference.replace(/^\S+/, code => variantName(family, code));

/** The comparison, and what it leads to, where the reason says so in a sentence of its own; where two parts mate, that sentence is the rule. */
function parts(text, by) {
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

function nextStep(step, family) {
  const where = step.on === 'part' ? 'on the part' : `on the engine${step.position ? `, ${positionName(family, step.position)}` : ''}`;
  return `${step.name} ${where}: ${say('method', step.check)}, ${step.minutes} min`;
}

const isNothing = answer => answer.asked.part === 'none';

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
  return [partLink(worst.part), ` ${worst.name}${which}`, danger(worst.danger), ': ', worst.tellApart ?? 'nothing recorded separates them', '. ',
    el('a', { href: address('tell-apart.html', { parts: answer.asked.part }) }, 'Tell them apart before paying'), ', or see ',
    el('a', { href: address('look-alikes.html', { number: answer.asked.part, family: answer.asked.family }) }, count(answer.lookAlikes.length, 'look-alike')), '.'];
}

function fittedParts({ identity: { fitted } }) {
  return fitted.flatMap((part, index) => (index ? [', ', partLink(part)] : [partLink(part)]));
}

/** A verdict is as sure as the weaker of its axes; where they differ both are said, so that a sure "differently" is not read as a guess. */
function howSure({ sureness: whole, mounts, runs, headline }) {
  const says = value => [sureness(value), ` – ${meaningOfSureness(value)}`];
  return headline === 'does-not-fit' || mounts.sureness === runs.sureness ? says(whole)
    : [el('div', null, `Mounts ${say('mounts', mounts.value)}: `, says(mounts.sureness)), el('div', null, `Runs ${say('runs', runs.value)}: `, says(runs.sureness))];
}

function head(answer, family) {
  const reason = decisive(answer);
  const [why, outcome] = reason ? parts(inWords(reason.text, answer, family), reason.by) : ['No feature, joint or finding that speaks of it is recorded.', ''];
  const [next] = answer.measureNext;
  const outside = answer.reasons.find(one => one.code === 'outside-variant');
  return el('section', { class: 'headline', 'data-headline': answer.headline },
    el('h2', { 'data-first': true, tabindex: '-1' }, verdictShape(answer.headline), el('span', null, answer.headlineText)),
    outside ? el('p', { class: 'notice' }, inWords(outside.text, answer, family)) : null,
    el('p', { class: 'why' }, linked(why, reason && partsOf(reason))),
    facts([
      ['What happens then', whatThen(answer, outcome)],
      ['Settle it first by', next ? `${sentence(nextStep(next, family))}.` : ''],
      ['The maker fitted', ['fitted-here', 'same-both-ways'].includes(answer.identity.relation) ? '' : fittedParts(answer)],
      ['Telling apart', tellApart(answer)],
      ['How sure', howSure(answer)],
    ]));
}

function axisRow(name, axis, vocabulary, answer) {
  const open = axis.couldBe.length > 1 ? `still possible: ${axis.couldBe.map(value => say(vocabulary, value)).join(', ')}` : 'nothing else possible';
  const decided = axis.decidedBy.map(id => el('a', { href: `#${id}` }, id));
  return [name, el('strong', null, say(vocabulary, axis.value), axis.disputed ? ' (disputed)' : ''), axis.value === 'not-known' || axis.couldBe.length > 1 ? open : '–',
    axis.rank === undefined ? 'nothing stated' : [`rank ${axis.rank} of 6`, decided.length ? [': ', decided.flatMap((link, index) => (index ? [', ', link] : [link]))] : ''], sureness(axis.sureness)];
}

function axes(answer) {
  return section('Two questions, two answers',
    ruled('Does it go on, and does the engine run as before', ['Question', 'Answer', 'Could be', 'Decided by', 'Sureness'], [
      axisRow('Mounts', answer.mounts, 'mounts', answer), axisRow('Runs', answer.runs, 'runs', answer),
    ], { className: 'restack' }));
}

function identity(answer, family) {
  const { asked, identity: { relation, fitted, chain } } = answer;
  return section('What was judged against what',
    facts([
      ['The part', isNothing(answer) ? 'nothing: the position is left empty' : asked.part ? [partLink(asked.part), ` – ${say('identity', relation)}`] : `${asked.number ?? 'none'} – ${say('identity', relation)}`],
      ['The maker fitted', fitted.length ? fittedParts(answer) : 'nothing, or not recorded'],
      ['Judged against', answer.judgedAgainst ? linked(answer.judgedAgainst) : ''],
      ['Runs compared with', named(answer.reference, family)],
      ['Neighbours given', asked.with.length ? asked.with.map(text => el('div', null, positionName(family, text.split('=')[0]), ': ', text.endsWith('=none') ? 'none' : partLink(text.split('=').slice(1).join('=')))) : ''],
      ['Chain of numbers', chain.length ? el('ol', { class: 'chain' }, chain.map(link => el('li', null, linked(link.text)))) : ''],
    ]));
}

function changes(caption, list, family) {
  return list.length === 0 ? null : ruled(caption, ['Position', 'What it needs', 'There now', 'Parts that would do', 'Why'], list.map(change => [
    positionName(family, change.position), linked(change.demand), linked(change.held), change.parts.length ? change.parts.map(part => el('div', null, partLink(part))) : 'none known', linked(change.text),
  ]), { className: 'restack' });
}

function works(answer) {
  return section('Work', answer.works.length === 0 ? null : ruled('Work that the answer counts on', ['Work', 'Who', { text: 'Days', class: 'count' }, { text: 'Price', class: 'count' }, 'Can be undone', 'Because of'], answer.works.map(work => [
    work.name, work.who ?? 'not recorded', work.days === undefined ? 'not recorded' : String(work.days), work.price ? `${work.price.amount} ${work.price.currency}` : 'not recorded',
    work.canBeUndone === undefined ? 'not recorded' : work.canBeUndone ? 'yes' : 'no', work.reasons.join(', '),
  ]), { className: 'restack' }));
}

/** Everything below and including the verdict. */
export function fitAnswer(answer, family) {
  return [
    head(answer, family),
    axes(answer),
    identity(answer, family),
    section('Reasons', reasonsTable(answer.reasons.map(reason => ({ ...reason, text: inWords(reason.text, answer, family) })), answer.asked.family)),
    section('What must change with it', changes('Also needed', answer.alsoNeeded, family)),
    section('What perhaps must change with it: a value is not known', changes('Perhaps needed', answer.perhapsNeeded, family)),
    works(answer),
    section('Measure next', answer.measureNext.length ? el('ol', null, answer.measureNext.map(step =>
      el('li', null, `${sentence(nextStep(step, family))}; settles whether it ${step.settles === 'mounts' ? 'mounts' : 'runs the same'}.`, step.how ? el('span', { class: 'quiet' }, ` ${sentence(step.how)}.`) : ''))) : null),
    section('Disagreements', answer.disagreements.length ? el('ul', null, answer.disagreements.map(other => el('li', null, linked(other.text)))) : null),
    section('It depends on when the engine was built', answer.spans.length ? ruled('Answers by span', ['Span', 'Mark to look for', 'Answer', 'Fitted there'], answer.spans.map(span => [
      span.span, span.mark ?? 'none recorded', verdict(span.headline), span.fitted.map(part => el('div', null, partLink(part))),
    ]), { className: 'restack' }) : null),
    section('What was not compared', el('p', null, answer.notCompared)),
    section('Cautions', answer.cautions.length ? el('ul', { class: 'cautions' }, answer.cautions.map(caution => el('li', null, caution.text))) : null),
    addresses(answer),
  ];
}
