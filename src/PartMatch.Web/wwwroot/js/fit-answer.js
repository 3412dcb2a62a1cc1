// The fit answer as a sheet: the verdict, what was found, and below it everything the verdict rests on.

import { positionName } from './choices.js';
import { foundSection, reasonLinks, sourcesSection, untold } from './fit-findings.js';
import { fittedParts, head, inWords, isNothing, named, nextStep } from './fit-headline.js';
import { reasonsTable } from './fit-reasons.js';
import { el, facts, linked, pageOf, partLink, ruled, say, section, sentence, sureness, verdict } from './format.js';
import { addresses } from './page.js';
import { sumLink } from './sum-links.js';

function axisRow(name, axis, vocabulary, answer) {
  const open = axis.couldBe.length > 1 ? `still possible: ${axis.couldBe.map(value => say(vocabulary, value)).join(', ')}` : 'nothing else possible';
  return [name, el('strong', null, say(vocabulary, axis.value), axis.disputed ? ' (disputed)' : ''), axis.value === 'not-known' || axis.couldBe.length > 1 ? open : '–',
    axis.rank === undefined ? 'nothing stated' : [`rank ${axis.rank} of 6`, axis.decidedBy.length ? [': ', reasonLinks(answer, axis.decidedBy)] : ''], sureness(axis.sureness)];
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

/** What timing and compression become, where the part has a say in them. */
function engineChange({ engineChange: change }) {
  return section('Timing and compression', change ? [
    el('p', null, change.text),
    change.text.startsWith('Not reckoned') ? null : change.notKnown.map(text => el('p', { class: 'quiet' }, `Not known: ${text}.`)),
    change.link ? el('p', { class: 'small' }, el('a', { href: pageOf(change.link) }, 'The whole sum')) : null,
  ] : null);
}

/** Where no change of the engine is reckoned here, the sum that speaks of this position. */
function sum(answer, family) {
  const { asked: { variant, position, part }, identity: { relation } } = answer;
  const link = answer.engineChange || isNothing(answer) ? null : sumLink(family, position, { variant, part: relation === 'fitted-here' ? undefined : part });
  return section('Its sum', link ? el('p', null, link) : null);
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

function measureNext(answer, family) {
  return section('Measure next', answer.measureNext.length === 0 ? null : el('ol', null, answer.measureNext.map(step =>
    el('li', null, `${sentence(nextStep(step, family))}; settles whether it ${step.settles === 'mounts' ? 'mounts' : 'runs the same'}.`,
      step.how ? el('span', { class: 'quiet' }, ` ${sentence(step.how)}.`) : ''))));
}

function spans(answer) {
  const rows = answer.spans.map(span => [span.span, span.mark ?? 'none recorded', verdict(span.headline), span.fitted.map(part => el('div', null, partLink(part)))]);
  return section('It depends on when the engine was built',
    rows.length ? ruled('Answers by span', ['Span', 'Mark to look for', 'Answer', 'Fitted there'], rows, { className: 'restack' }) : null);
}

/** What was tried is recorded here; its form is fetched when it is opened. */
function recording(answer, family, change) {
  const place = el('details', { class: 'recording' }, el('summary', null, 'Tried it? Record what you found'));
  place.addEventListener('toggle', async () => {
    if (!place.open || place.childElementCount > 1) return;
    const { findingForm } = await import('./fit-record.js');
    if (place.childElementCount === 1) place.append(findingForm(answer, family, change));
  });
  return place;
}

/** The way to say that a finding is wrong; asked about only when it is pressed. */
function turnedOut(answer, change) {
  return finding => {
    const place = el('div', { class: 'turned-out' });
    const button = el('button', {
      type: 'button', class: 'plain', onclick: async () => {
        const { retraction } = await import('./fit-retract.js');
        place.replaceChildren(retraction(answer, finding, { ...change, leave: () => { place.replaceChildren(button); button.focus(); } }));
      },
    }, 'This turned out wrong', el('span', { class: 'unseen' }, ` (${finding.code})`));
    place.append(button);
    return place;
  };
}

/** What was found stands in a section of its own: here stays what was compared. */
function reckoned(answer, family) {
  const reasons = answer.reasons.filter(reason => reason.by !== 'finding').map(reason => ({ ...reason, text: inWords(reason.text, answer, family) }));
  return section('Reasons', reasonsTable(reasons));
}

function sections(answer, family, change) {
  const left = untold(answer);
  return [
    head(answer, family),
    foundSection(answer, { turnedOut: turnedOut(answer, change), recording: recording(answer, family, change) }),
    engineChange(answer),
    sum(answer, family),
    axes(answer),
    identity(answer, family),
    reckoned(answer, family),
    section('What must change with it', changes('Also needed', answer.alsoNeeded, family)),
    section('What perhaps must change with it: a value is not known', changes('Perhaps needed', answer.perhapsNeeded, family)),
    works(answer),
    measureNext(answer, family),
    section('Disagreements', left.length ? el('ul', null, left.map(other => el('li', null, linked(other.text)))) : null),
    spans(answer),
    section('What was not compared', el('p', null, answer.notCompared)),
    section('Cautions', answer.cautions.length ? el('ul', { class: 'cautions' }, answer.cautions.map(caution => el('li', null, caution.text))) : null),
    sourcesSection(answer),
    addresses(answer),
  ];
}

/** Everything below and including the verdict. When something is recorded or withdrawn here, the answer as it is then takes its place. */
export function fitAnswer(answer, family) {
  const place = el('div');
  function draw(shown, told) {
    const change = { changed: (now, what) => draw(now, what) };
    place.replaceChildren(...[told, ...sections(shown, family, change)].filter(Boolean));
    if (told) {
      told.focus();
      told.scrollIntoView({ block: 'nearest' });
    }
  }

  draw(answer);
  return place;
}
