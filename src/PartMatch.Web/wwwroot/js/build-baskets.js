// What to order, seller by seller, with the number as the seller writes it, and what must not be ordered before it is measured.

import { address, count, el, linked, partLink, ruled, sentence, sentences } from './format.js';
import { codeOf, money } from './offer-words.js';
import { listedAs } from './build-words.js';

const heads = ['What', 'Packs', { text: 'Price of one', class: 'count' }, { text: 'Together', class: 'count' }, 'Seen', 'There on', 'For', 'To mind'];

/** What has to be measured before it is ordered stands at the part itself, loud up to its colon. */
function measureFirst(flag) {
  const [first, ...rest] = sentences(flag).split(/(?=:)/);
  return el('div', { class: 'measure-first' }, el('strong', null, first), rest.join(''));
}

const isMeasured = flag => /^measure\b/i.test(flag);

function row(item, byCode) {
  const isConverted = item.price.currency !== item.converted.currency;
  const [measured, others] = [item.flags.filter(isMeasured), item.flags.filter(flag => !isMeasured(flag))];
  const listed = item.part ? listedAs(item.numberAsWritten, [item.part]) : null;
  return {
    class: measured.length ? 'not-yet' : null,
    cells: [
      [item.part ? partLink(item.part) : item.numberAsWritten ?? 'no number', el('div', { class: 'plain-name' }, item.name),
        el('div', { class: 'small plain-name' }, listed, el('span', { class: 'acts' }, listed ? ' · ' : '', offerLink(item.offer))),
        measured.map(measureFirst)],
      [String(item.packs), item.piecesInPack > 1 ? ` of ${item.piecesInPack}` : ''],
      { cell: [money(item.price), isConverted ? el('div', { class: 'quiet small' }, `= ${money(item.converted)}`) : null], class: 'count' },
      { cell: money(item.total), class: 'count' }, item.seenOn, item.arrivesOn,
      item.for.map(code => sentence(byCode.get(code) ?? code)).join('; '),
      [item.coreDeposit ? el('div', null, `${money(item.coreDeposit)} deposit for the old part.`) : null,
        others.map(flag => el('div', null, linked(sentences(flag))))],
    ],
  };
}

function offerLink(offer) {
  const [book, code] = offer.split('/');
  return el('a', { href: address('record.html', { book, table: 'offers', key: code }) }, 'the offer');
}

function basket(one, byCode) {
  const sum = (what, amount, text = '') => ({
    class: 'sum', cells: [{ cell: what, colspan: 3 }, { cell: money(amount), class: 'count' }, { cell: text, colspan: 4, 'data-label': '' }],
  });
  return el('section', { class: 'basket' },
    el('h3', null, el('a', { href: address('sellers.html', { seller: codeOf(one.seller) }) }, one.name), ` – ${money(one.total)}, there on ${one.arrivesOn}`),
    ruled(`From ${one.name}: ${count(one.items.length, 'offer')}`, heads, [
      ...one.items.map(item => row(item, byCode)),
      sum('Goods', one.goods), Number(one.import.amount) === 0 ? null : sum('Import charge', one.import),
        sum('Sending', one.sending, sentences(one.sendingText)), { ...sum('Together', one.total), class: 'sum total' },
    ].filter(Boolean), { className: 'restack' }));
}

/** Prints what is to be ordered and nothing else. */
function printAlone(event) {
  event.target.closest('details').open = true;
  document.body.dataset.print = 'orders';
  window.addEventListener('afterprint', () => { delete document.body.dataset.print; }, { once: true });
  window.print();
}

/** A table for each seller, and the way to have them alone on paper. */
export function basketSections(plan) {
  if (plan.baskets.length === 0) return [];
  const byCode = new Map(plan.lines.map(line => [line.position, line.name]));
  return [
    el('p', { class: 'printed alone' }, `What to order for the plan of ${plan.asked.startOn}, version ${plan.asked.version}. ${plan.headlineText}`),
    el('p', { class: 'buttons acts' }, el('button', { type: 'button', class: 'plain', onclick: printAlone }, 'Print the order list')),
    ...plan.baskets.map(one => basket(one, byCode)),
  ];
}
