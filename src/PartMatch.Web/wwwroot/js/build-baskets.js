// What to order, seller by seller.

import { address, count, el, linked, partLink, ruled, sentence, sentences } from './format.js';
import { codeOf, money } from './offer-words.js';

const heads = ['What', 'Packs', { text: 'Price of one', class: 'count' }, { text: 'Together', class: 'count' }, 'Seen', 'There on', 'For', 'To mind'];

function offerLink(offer) {
  const [book, code] = offer.split('/');
  return el('a', { href: address('record.html', { book, table: 'offers', key: code }) }, 'the offer');
}

function row(item, byCode) {
  const isConverted = item.price.currency !== item.converted.currency;
  return [
    [item.part ? partLink(item.part) : item.numberAsWritten ?? 'no number', el('div', { class: 'plain-name' }, item.name),
      el('div', { class: 'small plain-name' }, offerLink(item.offer))],
    [String(item.packs), item.piecesInPack > 1 ? ` of ${item.piecesInPack}` : ''],
    { cell: [money(item.price), isConverted ? el('div', { class: 'quiet small' }, `= ${money(item.converted)}`) : null], class: 'count' },
    { cell: money(item.total), class: 'count' }, item.seenOn, item.arrivesOn,
    item.for.map(code => sentence(byCode.get(code) ?? code)).join('; '),
    [item.coreDeposit ? el('div', null, `${money(item.coreDeposit)} deposit for the old part`) : null,
      item.flags.map(flag => el('div', null, linked(sentences(flag))))],
  ];
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

/** A table for each seller. */
export function basketSections(plan) {
  const byCode = new Map(plan.lines.map(line => [line.position, line.name]));
  return plan.baskets.map(one => basket(one, byCode));
}
