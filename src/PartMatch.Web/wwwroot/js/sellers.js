// Sellers: all of them with their terms, or one in full.

import { address, count, el, facts, rowKey, ruled, sentence, ways } from './format.js';
import { daysText, money, returnsText } from './offer-words.js';
import { addresses, bind, choose, drawStrip } from './page.js';
import { askOnce } from './api.js';

const { seller } = document.querySelector('form[data-question]').elements;

drawStrip();

async function prepare(query) {
  const { sellers } = await askOnce('/api/sellers');
  seller.replaceChildren(el('option', { value: '' }, 'Every seller'), ...new Map(sellers.map(({ terms }) => [terms.code, el('option', { value: terms.code }, terms.name)])).values());
  choose(seller, query.get('seller'));
}

const sending = ({ shippingFixed, shippingPerItem, freeFrom }) => [
  shippingFixed ? `${money(shippingFixed)} a parcel` : 'a parcel: not known', shippingPerItem ? `${money(shippingPerItem)} a piece` : 'a piece: not known', freeFrom ? `free from ${money(freeFrom)}` : '',
].filter(Boolean).join('; ');

const importing = ({ importChargePercent }) => (importChargePercent === undefined ? 'not known' : `${importChargePercent} % of the price`);

const back = ({ returnsDays, restockingPercent }) => returnsText({ days: returnsDays, restockingPercent });

const offersOf = ({ terms, offers, latestSeenOn }) => (offers === 0 ? 'none recorded' : [el('a', { href: address('offers.html', { seller: terms.code }) }, count(offers, 'offer')), `, the latest of ${latestSeenOn}`]);

const row = one => [
  [el('a', { href: address('sellers.html', { seller: one.terms.code }) }, one.terms.name), el('p', { class: 'small quiet' }, one.terms.country ?? 'country not recorded')],
  sentence(sending(one.terms)), sentence(importing(one.terms)), daysText(one.terms), sentence(back(one.terms)), offersOf(one), sentence(one.deliveriesText),
];

function sheet(one) {
  const { terms } = one;
  return el('section', { class: 'headline' }, el('h2', { 'data-first': true, tabindex: '-1' }, terms.name),
    facts([
      ['Country', terms.country ?? 'not recorded'], ['Currency', terms.currency ?? 'not recorded'], ['Sending', sentence(sending(terms))], ['Import charge', sentence(importing(terms))], ['On the way', daysText(terms)],
      ['Sent back', sentence(back(terms))], ['Offers', offersOf(one)], ['Sent the wrong thing', sentence(one.deliveriesText)], ['Note', terms.note], ['Book', el('a', { href: address('record.html', { book: terms.book }) }, terms.book)],
    ]),
    ways(['Edit this seller', address('record.html', { book: terms.book, table: 'sellers', key: rowKey(terms.code) })], ['History', address('history.html', { book: terms.book, table: 'sellers', key: rowKey(terms.code) })]));
}

function render(answer, query) {
  const wanted = query.get('seller');
  const shown = answer.sellers.filter(({ terms }) => !wanted || terms.code === wanted);
  const heading = answer.sellers.length === 0 ? 'No seller is recorded' : shown.length === 0 ? `No seller has the code ${wanted}` : wanted ? shown[0].terms.name : count(shown.length, 'seller');
  return {
    title: heading,
    summary: wanted ? `${heading}.` : 'every seller.',
    said: `${heading}.`,
    content: [
      wanted && shown.length ? shown.map(sheet) : el('section', { class: 'headline' }, el('h2', { 'data-first': true, tabindex: '-1' }, heading),
        el('p', { class: 'small quiet' }, 'What is not known of their terms is said, and never counted as nothing.'), ways(['Record a seller', `${address('record.html', { book: 'common', table: 'sellers' })}&new`])),
      wanted || shown.length === 0 ? null : ruled('Sellers and their terms', ['Seller', 'Sending', 'Import charge', 'On the way', 'Sent back', 'Offers', 'Sent the wrong thing'], shown.map(row), { className: 'restack' }),
      addresses(answer),
    ],
  };
}

bind({ prepare, toApi: () => '/api/sellers', render });
