// The pairs of a family that can be mixed up, the most dangerous first: how many of each sort, then one row a pair.

import { address, count, danger, el, linked, plain, ruled, say, sentence } from './format.js';
import { changeLink } from './history-words.js';
import { twoNumbers } from './look-alike-marks.js';
import { worst } from './look-alike-number.js';
import { addresses } from './page.js';

const relations = {
  'same-part': 'the same part', 'newer-number': 'the second is a newer number of the first', 'older-number': 'the second is an older number of the first',
  'trap': 'judged a trap', 'harmless': 'judged harmless', 'not-judged': 'nobody has judged them',
};

const sorts = [['high', 'high danger', { danger: 'high' }], ['medium', 'medium', { danger: 'medium' }], ['low', 'low', { danger: 'low' }], ['none', 'no danger', { danger: 'none' }], ['notJudged', 'not judged yet', { judgement: 'not-judged' }]];

/** Every sort with its number before the filters, each leading to its list. */
function tally({ counts }, family) {
  return el('ul', { class: 'tally' }, sorts.map(([sort, name, filter]) => el('li', null, el('b', null, counts[sort]), el('a', { href: address('look-alikes.html', { family, ...filter }) }, name))));
}

function narrowed(asked) {
  return [asked.danger ? `danger ${asked.danger}` : '', asked.judgement ? relations[asked.judgement] ?? plain(asked.judgement) : '', asked.kind ? plain(asked.kind) : ''].filter(Boolean).join('; ');
}

const workList = () => el('div', { class: 'notice' },
  el('p', null, el('strong', null, 'This is the work list: '), 'pairs that nobody has judged, the most dangerous first. Tell the two apart, then judge them: ', el('em', null, 'a trap'), ', ',
    el('em', null, 'harmless'), ' or ', el('em', null, 'the same part'), ', with the evidence for it.'));

const alike = pair => [pair.near ? (pair.near.class ? say('mixUp', pair.near.class) : 'the same key') : '', pair.sameToTheEye ? 'the same to the eye' : ''].filter(Boolean).join('; ');

// The more of them are for sale, the likelier they are met: equal dangers stand in that order.
const offered = ({ a, b }) => (a.offers + b.offers === 0 ? null : el('p', { class: 'quiet' }, `${count(a.offers, 'offer')} of the first, ${b.offers} of the second`));

async function row(pair, judge) {
  const place = await worst(pair.worst);
  const [check] = pair.tellApart;
  const kinds = new Set([pair.a.kind, pair.b.kind].filter(Boolean).map(plain));
  return [
    [el('div', { class: 'twins' }, twoNumbers(pair)), el('p', { class: 'small quiet' }, [...kinds].join(' and '))],
    [danger(pair.danger), el('p', null, linked(pair.dangerText)), offered(pair), el('p', { class: 'quiet' }, sentence(alike(pair)))],
    [sentence(relations[pair.relation] ?? plain(pair.relation)), pair.relationText ? el('p', { class: 'quiet' }, linked(pair.relationText)) : null],
    place ?? 'none, or not fitted anywhere here',
    [el('p', null, check ? `${sentence(check.text)}${check.beforePaying ? ': before paying' : ': in hand'}.` : linked(pair.tellApartText)),
      el('a', { href: address('tell-apart.html', { parts: `${pair.a.part},${pair.b.part}` }) }, 'Tell them apart', el('span', { class: 'unseen' }, ` ${pair.a.number} and ${pair.b.number}`)),
      el('p', { class: 'buttons' }, el('button', { type: 'button', class: 'plain', onclick: event => judge(pair, event.currentTarget) },
        pair.relation === 'not-judged' ? 'Judge' : 'Judge again', el('span', { class: 'unseen' }, ` ${pair.a.number} and ${pair.b.number}`)))],
  ];
}

let told = null; // makes what is said of what has just been stored, for the next drawing

const notice = isFirst => el('p', { class: 'notice done', tabindex: '-1', 'data-first': isFirst }, told());

/** Said at once, before the list is ranked anew, which takes seconds in a large family. */
function toldAgain(pair, { change }, again) {
  told = () => (change === undefined ? 'Nothing was different from what is there, so nothing was stored.'
    : [`${pair.a.number} and ${pair.b.number} are judged, as `, changeLink(change), '.']);
  return again(notice(false));
}

function takeTold() {
  const node = told ? notice(true) : null;
  told = null;
  return node;
}

/** The ranked list of one family. */
export async function rankedPairs(answer, query, { familyName, again }) {
  const filters = narrowed(answer.asked);
  const all = sorts.slice(0, 4).reduce((sum, [sort]) => sum + answer.counts[sort], 0);
  const heading = answer.total === 0 ? 'No pair is left with these filters' : filters ? `${answer.total} of ${count(all, 'pair')}` : `${count(all, 'pair')} that can be mixed up`;
  const place = el('div', { class: 'judging' });
  async function judge(pair, button) {
    const close = () => { place.replaceChildren(); button.focus(); };
    const { judging } = await import('./look-alike-judge.js'); // not before somebody judges
    const { node, focus } = await judging(answer.asked.family, pair, { status: document.getElementById('status'), cancel: close, saved: now => toldAgain(pair, now, again) });
    place.replaceChildren(node);
    node.scrollIntoView({ block: 'nearest' });
    focus();
  }

  const next = Object.fromEntries([...query].filter(([name]) => name !== 'cursor'));
  return {
    title: `${familyName}: pairs`,
    summary: `every pair of ${familyName}${filters ? `; ${filters}` : ''}.`,
    said: `${heading}.`,
    content: [
      takeTold(),
      el('section', { class: 'headline' }, el('h2', { 'data-first': true, tabindex: '-1' }, all === 0 ? 'No pair that can be mixed up is recorded' : heading), tally(answer, answer.asked.family),
        el('p', { class: 'small quiet' }, `The counts are over every pair of ${familyName}, whatever is shown below${answer.complete ? '; none is missing' : '; the list is not complete'}. Danger is how easily the two are mixed up (1–3) times the harm of the mix-up (0–5).`)),
      answer.asked.judgement === 'not-judged' ? workList() : null,
      place,
      answer.pairs.length === 0 ? null : ruled('Pairs, the most dangerous first', ['The two', 'Danger', 'To each other', 'Worst place', 'Cheapest check'], await Promise.all(answer.pairs.map(pair => row(pair, judge))), { className: 'restack pairs' }),
      answer.cursor ? el('p', null, el('a', { class: 'button', href: address('look-alikes.html', { ...next, cursor: answer.cursor }) }, 'The next ones')) : null,
      addresses(answer),
    ],
  };
}
