// What can be taken for what this build buys: what came wrong first, then the worst pair, each with what tells the two apart before paying and in hand.

import { ask } from './api.js';
import { address, count, danger, el, linked, partLink, plain, ruled, sentence } from './format.js';
import { addresses } from './page.js';

const numberOf = part => part.replace(/^[^:]*:/, '');

/** "valve lift, with a caliper, 6 min: 9.60 mm, not 8.80 mm". */
function checkLine(check, one) {
  const apart = one.pair.differs.find(row => row.feature === check.feature);
  const [right, wrong] = one.part === one.pair.a.part ? ['asked', 'other'] : ['other', 'asked'];
  const word = text => (/^[a-z][a-z0-9|-]*$/.test(text) ? plain(text).replaceAll('|', ' and ') : text);
  const values = apart?.[right] && apart[wrong] ? [': ', el('strong', null, word(apart[right])), `, not ${word(apart[wrong])}`] : '';
  return el('div', null, sentence(check.text), values);
}

const cheapest = (one, isBefore) => one.pair.tellApart.filter(check => check.beforePaying === isBefore)
  .filter((check, index, all) => all.findIndex(other => other.feature === check.feature) === index).slice(0, 2);

const checks = (one, isBefore, none) => {
  const lines = cheapest(one, isBefore).map(check => checkLine(check, one));
  return lines.length ? lines : el('span', { class: 'quiet' }, none);
};

function row(one, nameOf) {
  const { pair } = one;
  return [
    [el('strong', null, one.for.map(nameOf).join(', ') || 'Not for a position'), el('div', null, partLink(one.part, numberOf(one.part)), ', not ', partLink(one.other, numberOf(one.other))),
      el('div', { class: 'small quiet' }, one.orders.length ? one.orders.join('; ') : 'still to be ordered')],
    [danger(pair.danger), one.cameWrong.map(text => el('div', null, el('strong', null, 'Came wrong: '), linked(text))), el('div', { class: 'small' }, linked(pair.dangerText))],
    checks(one, true, 'nothing that a picture or a label shows'),
    [checks(one, false, pair.tellApartText), el('div', { class: 'small acts' }, el('a', { href: address('tell-apart.html', { parts: `${one.part},${one.other}` }) }, 'Tell them apart',
      el('span', { class: 'unseen' }, ` ${numberOf(one.part)} and ${numberOf(one.other)}`)), ' or ',
    el('a', { href: address('look-alikes.html', { number: numberOf(one.part), family: pair.worst?.family }) }, 'all its look-alikes', el('span', { class: 'unseen' }, ` of ${numberOf(one.part)}`)))],
  ];
}

/** What the answer says; `more` asks for less dangerous ones too. */
function sections(answer, { family, print, more }) {
  const nameOf = code => family.positions.find(one => one.position === code)?.name ?? code;
  return [
    el('p', null, answer.headlineText.replace(/: [^:]*:.*$/, `: ${count(answer.pairs.length, 'pair')} of ${answer.asked.danger === 'high' ? 'high danger' : 'medium or high danger'}.`)),
    answer.pairs.length === 0 ? null : el('p', { class: 'small' }, 'Danger is how easily the two are mixed up (1–3) times the harm of the mix-up (0–5). Hold what comes against both columns before it is fitted.'),
    el('p', { class: 'buttons acts' }, el('button', { type: 'button', class: 'plain', onclick: print }, 'Print these pairs'), ' ',
      answer.asked.danger === 'high' ? el('button', { type: 'button', class: 'plain', onclick: more }, 'Those of medium danger too') : null),
    answer.pairs.length ? ruled(answer.pairs[0].cameWrong.length ? 'What came wrong, then the worst' : 'The worst first', ['Wanted, and not that', 'Danger', 'Before you pay', 'In hand'], answer.pairs.map(one => row(one, nameOf)), { className: 'restack mixed-up' }) : null,
    addresses(answer),
  ];
}

/** Asks for the pairs of high danger first: they are what goes to the bench. */
export function mixUpSections(apiOf, query, { family, print }) {
  const place = el('div');
  async function fill(least) {
    const answer = await ask(apiOf('look-alikes', query, { danger: least }));
    place.replaceChildren(...sections(answer, { family, print, more: () => fill('medium') }).flat(Infinity).filter(Boolean));
  }
  return { question: apiOf('look-alikes', query, { danger: 'high' }), draw: answer => {
    place.replaceChildren(...sections(answer, { family, print, more: () => fill('medium') }).flat(Infinity).filter(Boolean));
    return [place];
  } };
}
