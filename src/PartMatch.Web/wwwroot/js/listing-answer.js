// What a listing comes to: one word for the page, why, what is offered, what each number is, and what to ask.

import { address, count, danger, el, facts, linked, pageOf, partLink, plain, ruled, section, sentence, sureness, svg, verdict } from './format.js';
import { keepForms } from './listing-keep.js';
import { messageBox } from './seller-message.js';

// A tie-on label with its string: ticked, with a question on it, or struck out.
const label = 'M9 5 H26 V19 H9 L3 12 Z';
const marks = {
  'buy': [['path', { d: label, class: 'solid' }]],
  'ask-first': [['path', { d: label, class: 'outline' }], ['path', { d: 'M14 9.5 C14 6.5 20 6.5 20 9.5 C20 11.8 17 11.4 17 14 M17 16 V17', class: 'outline' }]],
  'leave-it': [['path', { d: label, class: 'outline' }], ['path', { d: 'M12 8 L23 16 M23 8 L12 16', class: 'outline' }]],
};
const like = { 'buy': 'fits', 'ask-first': 'not-known-yet', 'leave-it': 'does-not-fit' }; // the colours of the verdicts
const headlineWords = { 'buy': 'Buy', 'ask-first': 'Ask first', 'leave-it': 'Leave it' };

const shape = headline => svg('svg', { viewBox: '0 0 28 24', class: 'shape', 'aria-hidden': 'true', focusable: 'false' }, marks[headline].map(([tag, attributes]) => svg(tag, attributes)));

const short = headline => el('span', { class: 'verdict', 'data-headline': like[headline] }, shape(headline), el('span', null, headlineWords[headline]));

const verdicts = {
  'right-one': 'the right one', 'newer-number': 'a newer number of it', 'older-number': 'an older number of it', 'look-alike': 'a look-alike', 'another-known-part': 'another known part',
  'narrows-only': 'narrows, never identifies', 'claimed-only': 'only claimed', 'unknown': 'in no book here',
};
const roles = { 'sold': 'what is sold', 'replaces': 'what it is said to replace', 'fits': 'what it is said to fit', 'not-this': 'said not to be it', 'sellers-own': 'the seller’s own number', 'mentioned': 'mentioned' };
const reads = { 'broken': 'put together from pieces', 'foreign-letters': 'read through foreign letters', 'look-alike-characters': 'read by taking look-alike characters for one another' };

const money = ({ amount, currency }) => `${amount}${currency ? ` ${currency}` : ''}`;

function price({ offer, unitPrice }) {
  if (!offer.price) return 'not stated';
  const { money: sum, readings, written, why } = offer.price;
  if (sum) return [el('strong', null, money(sum)), offer.pieces > 1 ? ` for ${offer.pieces}${unitPrice ? `, ${money(unitPrice)} each` : ''}` : ''];
  return [`“${written}”: `, readings ? `${readings.map(money).join(' or ')}? ` : '', why];
}

const sending = shipping => (shipping ? [shipping.rate.money ? (Number(shipping.rate.money.amount) === 0 ? 'free' : money(shipping.rate.money)) : `“${shipping.rate.written}”`, shipping.to ? ` to ${shipping.to}` : ''] : 'not known');

const days = range => (range ? (range.least === range.most ? count(range.least, 'day') : `${range.least}–${range.most} days`) : 'not known');

function terms({ terms: { coreDeposit, corePart, returnable, returnDays, restockingPercent, freightBack } }) {
  return [
    coreDeposit ? `deposit ${coreDeposit.money ? money(coreDeposit.money) : coreDeposit.written} for the old part${corePart ? ` (${corePart})` : ''}` : '',
    returnable === 'no' ? 'not returnable' : returnDays !== undefined ? `return within ${count(returnDays, 'day')}` : returnable === 'yes' ? 'can be returned' : '',
    restockingPercent !== undefined ? `${restockingPercent} % kept back` : '',
    freightBack === 'buyer' ? 'the way back at your cost' : freightBack === 'seller' ? 'the way back at the seller’s cost' : '',
  ].filter(Boolean).join('; ') || 'nothing said of returns';
}

function offers(answer) {
  if (!answer.offers.length) return el('p', { class: 'quiet' }, 'No offer with a price stands in it.');
  return ruled('What is offered', ['Offer', 'Price', 'Sending', 'Arrives in', 'State', 'Terms', 'So'], answer.offers.map(one => [
    [one.name ?? 'without a name', one.offer.seller ? el('div', { class: 'quiet' }, one.offer.seller) : ''],
    price(one), sending(one.offer.shipping), days(one.offer.days),
    [one.offer.condition === 'not-stated' ? 'condition not stated' : plain(one.offer.condition), one.offer.availability === 'not-stated' ? '' : `, ${plain(one.offer.availability)}`, one.offer.level === 'not-stated' ? '' : `, ${plain(one.offer.level)}`],
    terms(one.offer), [short(one.headline), el('div', { class: 'small' }, answer.because[0] === one.because ? 'as said above' : linked(one.because))],
  ]), { className: 'restack' });
}

function held(rows) {
  return rows.length ? ruled('What the set holds', ['Part', { text: 'Pieces', class: 'count' }, 'Certain', 'It is'], rows.map(row => [
    [partLink(row.part), ` ${row.name ?? ''}`], row.quantity ?? 'not recorded', row.certainty === 'certain' ? 'yes' : row.certainty === 'possible' ? 'perhaps' : 'not recorded', verdicts[row.verdict],
  ]), { className: 'restack' }) : null;
}

function number(one, { asked, because }) {
  return el('article', { class: 'candidate' },
    el('h3', null, one.part ? partLink(one.part, one.written) : el('span', { class: 'number' }, one.written), el('span', null, ` ${asked.position || one.verdict !== 'another-known-part' ? verdicts[one.verdict] : 'a known part'}`), one.danger ? danger(one.danger) : null),
    because.includes(one.text) ? null : el('p', null, linked(one.text, one.part ? [one.part] : [])),
    facts([
      ['Stands as', `${roles[one.role]}: ${one.where.join('; ')}${reads[one.read] ? `; ${reads[one.read]}` : ''}`],
      ['Why that danger', one.dangerText ? linked(one.dangerText) : ''],
      ['There it', one.fit ? [el('a', { class: 'across', href: pageOf(one.fitLink) }, verdict(one.fit), sureness(one.sureness))] : ''],
      ['Nearest known', one.nearest.length ? one.nearest.map((near, index) => [index ? ', ' : '', partLink(near.part, near.number)]) : ''],
      ['More of it', one.part ? el('a', { href: address('look-alikes.html', { number: one.part, family: asked.family }) }, 'what it can be taken for') : ''],
    ]),
    held(one.holds));
}

// Related goods and file names of pictures: known or not, nobody asked about them.
const isAside = one => one.role === 'mentioned' && (one.verdict === 'unknown' || one.verdict === 'another-known-part');

function numbers(answer) {
  const asides = answer.numbers.filter(isAside);
  const told = answer.numbers.filter(one => !isAside(one));
  const folded = told.length > 0 && asides.length > 1;
  return [(folded ? told : answer.numbers).map(one => number(one, answer)),
    folded ? el('details', { class: 'on-paper' }, el('summary', null, `${asides.length} others that merely stand in it`), asides.map(one => number(one, answer))) : null];
}

export function listingAnswer(answer) {
  const [first, ...more] = answer.because;
  return [
    el('section', { class: 'headline', 'data-headline': like[answer.headline] },
      el('h2', { 'data-first': true, tabindex: '-1' }, shape(answer.headline), el('span', null, answer.headlineText)),
      el('p', { class: 'why' }, linked(first ?? '')),
      more.length ? el('ul', null, more.map(one => el('li', null, linked(one)))) : null,
      answer.missing.length ? facts([['Missing from what is needed', answer.missing.map(sentence).join('; ')]]) : null),
    answer.contradictions.length ? section('The listing contradicts itself', ruled('Two statements of one thing', ['It says', 'It says as well', 'So'], answer.contradictions.map(one => [one.one, one.other, linked(one.text)]), { className: 'restack' })) : null,
    answer.ask ? section(answer.headline === 'buy' ? 'Worth asking all the same' : 'Ask the seller', messageBox(answer.ask.text)) : null,
    section('Offers', offers(answer), keepForms(answer)),
    section(`${sentence(count(answer.numbers.length, 'number'))} in it`, answer.numbers.length ? numbers(answer) : el('p', { class: 'quiet' }, 'No number of a part stands in it.')),
    answer.warnings.length ? section('What was odd about it', el('ul', null, answer.warnings.map(one => el('li', null, one.text)))) : null,
    answer.cautions.length ? section('Cautions', el('ul', null, answer.cautions.map(one => el('li', null, one.text)))) : null,
  ].filter(Boolean);
}
