// The answer as a sheet: what the key achieves, the card to work from, what stays together, and what to ask or to make sure of.

import { positionName } from './choices.js';
import { address, count, el, facts, linked, partLink, ruled, section, sentence, sentences, svg } from './format.js';
import { addresses } from './page.js';
import { sellerMessage } from './seller-message.js';
import { walkRound } from './walk-round.js';
import { balloon, balloons, checkWords, keyDiagram, minutes, plainValue, seenText, tagsOf } from './tell-apart-key.js';

// A line that forks, to be read without colour: into ends of their own, into one end of two, into one, into none. Drawn on 28 × 24.
const fork = 'M3 12 H10 M10 5 V19 M10 5 H15 M10 19 H15';
const shapes = {
  'told-apart': [['path', { d: fork, class: 'outline' }], ['rect', { x: 16, y: 1, width: 8, height: 8, class: 'solid' }], ['rect', { x: 16, y: 15, width: 8, height: 8, class: 'solid' }]],
  'partly': [['path', { d: fork, class: 'outline' }], ['rect', { x: 16, y: 1, width: 8, height: 8, class: 'solid' }], ['rect', { x: 16, y: 15, width: 5, height: 8, class: 'dashed' }, ], ['rect', { x: 21, y: 15, width: 5, height: 8, class: 'dashed' }]],
  'not-told-apart': [['path', { d: 'M3 12 H10', class: 'outline' }], ['rect', { x: 11, y: 7, width: 7, height: 10, class: 'dashed' }], ['rect', { x: 18, y: 7, width: 7, height: 10, class: 'dashed' }]],
  'identified': [['path', { d: 'M3 12 H10', class: 'outline' }], ['rect', { x: 11, y: 6, width: 12, height: 12, class: 'solid' }]],
  'none-left': [['path', { d: 'M3 12 H10', class: 'outline' }], ['path', { d: 'M12 6 L24 18 M24 6 L12 18', class: 'outline' }]],
};

const shape = headline => svg('svg', { viewBox: '0 0 28 24', class: 'shape', 'aria-hidden': 'true', focusable: 'false' }, shapes[headline].map(([tag, attributes]) => svg(tag, attributes)));

const isPossible = one => one.state === 'possible';

function seenSoFar(answer, sheet) {
  if (answer.asked.seen.length === 0) return '';
  return el('ul', { class: 'bare seen-so-far' }, answer.asked.seen.map(seen => el('li', null, sentence(seenText(seen)), ' – ',
    el('a', { href: sheet.without(seen) }, 'take back', el('span', { class: 'unseen' }, ` ${seenText(seen)}`)))));
}

const modes = {
  'before-paying': ['Before paying: only what a photograph or a label shows. ', 'in-hand', 'Ask with the part in hand'],
  'in-hand': ['In hand. ', 'before-paying', 'Ask before paying'],
};

function effort(answer) {
  if (!answer.key) return '';
  const how = answer.method === 'exact' ? 'no key of these checks takes less on average' : 'too many candidates to try every key: a good one, perhaps not the best';
  return `${minutes(answer.expectedMinutes)} on average, ${minutes(answer.worstMinutes)} at worst; ${how}.`;
}

function head(answer, sheet) {
  const [where, other, question] = modes[answer.asked.mode];
  const left = answer.candidates.filter(isPossible).length;
  return el('section', { class: 'headline told', 'data-told': answer.headline },
    el('h2', { 'data-first': true, tabindex: '-1' }, shape(answer.headline), el('span', null, linked(answer.headlineText))),
    facts([
      ['Seen so far', seenSoFar(answer, sheet)],
      ['Still possible', [`${left} of ${count(answer.candidates.length, 'candidate')}`, sheet.alone ? [': the number asked about, and of ', el('a', { href: address('look-alikes.html', { number: sheet.alone }) }, 'its look-alikes'), ' those of medium and high danger'] : '']],
      ['Work', effort(answer)],
      ['How likely each is', linked(answer.weightsText)],
      ['Where it is', [where, el('a', { href: sheet.inMode(other) }, question), '.']],
    ]));
}

function candidateRow(one, { asked }, sheet, tags) {
  const name = sheet.nameOf(one);
  const lead = asked.family ? '' : el('span', { class: 'struck' }, partLink(one.candidate, one.number));
  return { 'data-state': one.state, cells: [
    [balloon(tags.get(one.candidate)), ' ', lead],
    [el('span', { class: 'struck' }, asked.family ? el('a', { href: address('family.html', { family: asked.family, variant: one.candidate }) }, name) : name),
      isPossible(one) ? '' : [el('p', null, el('b', { 'aria-hidden': 'true' }, '× '), el('b', null, 'ruled out'), ' by: ', linked(sentences(one.ruledOutBy.join('; '))))]],
    `${Math.round(one.weight * 100)} %`,
  ] };
}

function candidates(answer, sheet, tags) {
  return ruled('Candidates', [answer.asked.family ? 'Variant' : 'Number', 'What it is', { text: 'Likely at first', class: 'count' }], answer.candidates.map(one => candidateRow(one, answer, sheet, tags)), { className: 'slim candidates' });
}

/** By which check one makes sure that it is the one it seems to be; every line has to hold. */
function confirm(answer, about) {
  if (answer.asked.mode !== 'in-hand' || answer.confirm.length === 0) return null;
  const it = answer.candidates.find(isPossible) ?? answer.candidates[0];
  return [el('h3', null, 'To be sure that it is ', balloon(about.tags.get(it.candidate)), ' ', about.label(it.candidate)), el('p', { class: 'small quiet' }, 'Every line has to hold; the one that fails soonest for its minutes comes first.'),
    el('ol', { class: 'confirm' }, answer.confirm.map(one => el('li', null,
      el('span', { class: 'check-name' }, sentence(one.check.name)), el('span', { class: 'quiet' }, `, ${checkWords(one.check)}`), ': ', el('strong', null, plainValue(one.expect)),
      one.rulesOut.length ? [' – rules out ', balloons(one.rulesOut, about.tags)] : '')))];
}

function title(answer, sheet) {
  const left = answer.candidates.filter(isPossible);
  const names = left.slice(0, 3).map(one => one.number ?? sheet.nameOf(one));
  const what = answer.key ? 'Key' : 'Candidates';
  return left.length === 0 ? 'Candidates: none is left' : `${what}: ${names.join(' / ')}${left.length > 3 ? ` and ${left.length - 3} more` : ''}`;
}

/** Prints the card and nothing else of the page. */
function printCard() {
  document.body.dataset.print = 'card';
  window.addEventListener('afterprint', () => delete document.body.dataset.print, { once: true });
  window.print();
}

function card(answer, sheet, about) {
  const inShort = [answer.asked.mode === 'in-hand' ? 'In hand' : 'Before paying', answer.key ? `${minutes(answer.expectedMinutes)} on average, ${minutes(answer.worstMinutes)} at worst` : '', answer.asked.seen.map(seenText).join(', ')].filter(Boolean);
  return el('section', { class: 'card', 'aria-labelledby': 'card-title' },
    el('h2', { id: 'card-title' }, title(answer, sheet)),
    el('p', { class: 'card-about small' }, inShort.join(' · ')),
    answer.key ? keyDiagram(answer.key, about) : null,
    candidates(answer, sheet, about.tags),
    confirm(answer, about),
    answer.candidates.length > 1 ? el('p', { class: 'card-foot actions' }, el('button', { type: 'button', class: 'plain', onclick: printCard }, 'Print this card')) : null);
}

const mostShown = 10;

function pair(group, tags) {
  return el('div', { class: 'notice together' }, el('p', null, balloons(group.candidates, tags), ' ', el('strong', null, linked(group.text))),
    group.wouldSeparate.length ? [el('p', null, 'What would:'), el('ul', null, group.wouldSeparate.map(one => el('li', null, linked(one.text))))] : null);
}

/** Two by two what no check at hand separates, and what would; a long list is folded. */
function inseparable(answer, { tags }) {
  const [first, rest] = [answer.inseparable.slice(0, mostShown), answer.inseparable.slice(mostShown)];
  return section('Not separated', first.map(group => pair(group, tags)),
    rest.length ? el('details', null, el('summary', null, `${count(rest.length, 'more pair')}`), rest.map(group => pair(group, tags))) : null);
}

/** What was seen on an engine, by position; a part as on another variant than the rest is marked by a word. */
function positions(answer, sheet) {
  const list = answer.positions ?? [];
  const hasForeign = list.some(one => one.isForeign);
  return section(hasForeign ? 'Parts of other variants in it' : 'Where it was seen', list.length === 0 ? null : ruled('What was seen, by position', ['Position', 'As on', 'What that means'], list.map(one => ({
    'data-foreign': one.isForeign,
    cells: [[positionName(sheet.family, one.position), one.isForeign ? el('div', { class: 'foreign' }, '≠ not as the rest') : ''], one.as.length ? one.as.map(code => [balloon(code), ' ']) : 'none of these', sentences(one.text)],
  })), { className: 'restack' }));
}

/** Everything below and including the headline. */
export function tellApartAnswer(answer, sheet) {
  const tags = tagsOf(answer.candidates, Boolean(answer.asked.family));
  const byCode = new Map(answer.candidates.map(one => [one.candidate, one]));
  const about = { tags, addressWith: sheet.with, label: code => el('span', { class: 'end-name' }, byCode.get(code)?.number ? el('span', { class: 'number' }, byCode.get(code).number) : sheet.nameOf(byCode.get(code))) };
  const together = inseparable(answer, about);
  return [
    head(answer, sheet),
    positions(answer, sheet),
    answer.key ? null : together,
    card(answer, sheet, about),
    answer.key ? together : null,
    walkRound(answer.walkRound, tags, sheet.with),
    answer.message ? sellerMessage(answer.message, tags) : null,
    addresses(answer),
  ];
}
