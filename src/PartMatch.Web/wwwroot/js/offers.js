// Offers: a list by filters, or one of them with the words it was read from; a seller's price list is taken in below.

import { askOnce } from './api.js';
import { familyOf, offerFamilies, offerPositions } from './choices.js';
import { address, count, el, partLink, ruled, section, sentence } from './format.js';
import { conditionText, daysText, doorCost, money } from './offer-words.js';
import { addresses, bind, choose, drawStrip } from './page.js';

const form = document.querySelector('form[data-question]');
const { family, position, seller } = form.elements;
const listForm = document.getElementById('price-list');

drawStrip();

export const offerLink = ({ offer, book }) => address('offers.html', { offer, book });

async function showPositions(code, value) {
  offerPositions(position, code ? await familyOf(code) : null, value, 'Any position');
  position.disabled = code === '';
}

const sellers = () => askOnce('/api/sellers').then(answer => [...new Map(answer.sellers.map(({ terms }) => [terms.code, terms])).values()]);

async function prepare(query) {
  const [known] = await Promise.all([sellers(), offerFamilies(family, query.get('family'), 'Any family')]);
  seller.replaceChildren(el('option', { value: '' }, 'Any seller'), ...known.map(one => el('option', { value: one.code }, one.name)));
  choose(seller, query.get('seller'));
  await showPositions(family.value, query.get('position'));
}

family.addEventListener('change', () => showPositions(family.value));

function toApi(query) {
  if (query.size === 0) return null;
  const rest = new URLSearchParams(query);
  rest.delete('offer');
  return query.get('offer') ? `/api/offers/${encodeURIComponent(query.get('offer'))}?${rest}` : `/api/offers?${rest}`;
}

const number = one => (one.part ? partLink(one.part, one.number) : el('a', { class: 'number', href: address('look-alikes.html', { number: one.number }) }, one.number));

function row(one) {
  return {
    class: one.age.old ? 'quiet' : null,
    cells: [
      [number(one), el('p', { class: 'small' }, one.name ?? 'in no book')],
      [el('a', { href: address('sellers.html', { seller: one.seller }) }, one.sellerName), el('p', { class: 'small' }, conditionText(one))],
      [money(one.price), el('p', { class: 'small' }, one.pack === undefined ? 'for how many is not known' : one.pack === 1 ? 'a piece' : `for ${one.pack}, ${money(one.unitPrice)} a piece`)],
      doorCost(one.landed),
      daysText(one),
      [el('span', { class: 'number' }, one.age.seenOn), el('p', { class: 'small' }, one.age.old ? el('strong', null, sentence(one.age.text)) : sentence(one.age.text))],
      el('a', { href: offerLink(one) }, one.listing ? 'Open, with its words' : 'Open', el('span', { class: 'unseen' }, ` ${one.offer} of ${one.sellerName}`)),
    ],
  };
}

async function history(asked) {
  if (!asked.part) return null;
  const prices = await askOnce(`/api/parts/${encodeURIComponent(asked.part)}/prices`).catch(() => null);
  if (!prices || prices.ranges.length === 0) return null;
  const { plotFigures } = await import('./plot.js');
  return section('What was asked for it', ruled('Price of one piece', ['Condition', 'Currency', { text: 'Offers', class: 'count' }, { text: 'Least', class: 'count' }, { text: 'Middle', class: 'count' }, { text: 'Greatest', class: 'count' }],
    prices.ranges.map(range => [sentence(conditionText(range)), range.currency, String(range.offers), range.low.amount, range.middle.amount, range.high.amount]), { className: 'restack' }), plotFigures(prices.plots.map(plot => ({ ...plot, link: `${plot.link}&on=${asked.on}${asked.currency ? `&currency=${asked.currency}` : ''}`, described: true }))));
}

async function listed(answer, query) {
  const heading = answer.total === 0 ? 'No offer is recorded' : `${count(answer.total, 'offer')}${answer.old === 0 ? '' : answer.total === 1 ? ', and it is old' : `, ${answer.old} of them old`}`;
  const next = Object.fromEntries([...query].filter(([name]) => name !== 'cursor'));
  return {
    title: query.get('part') || 'Offers',
    summary: [query.get('part') || 'every offer', family.value ? family.selectedOptions[0].text : '', position.value ? position.selectedOptions[0].text : '', seller.value ? seller.selectedOptions[0].text : '', query.get('condition'), query.get('currency')].filter(Boolean).join('; '),
    said: `${heading}.`,
    content: [
      el('section', { class: 'headline' }, el('h2', { 'data-first': true, tabindex: '-1' }, heading),
        answer.total === 0 ? el('p', null, 'Nobody has stored one that answers to this. A price list can be taken in below.') : el('p', { class: 'small quiet' },
          `By number, the latest first. The cost at the door is for ${count(answer.asked.pieces, 'piece')}; offers seen more than ${count(answer.asked.staleAfter, 'day')} before ${answer.asked.on} are old.`)),
      answer.total === 0 ? null : ruled('Offers', ['Number', 'Seller', 'Price', 'At the door', 'On the way', 'Seen on', 'Record'], answer.offers.map(row), { className: 'restack' }),
      answer.cursor ? el('p', null, el('a', { class: 'button', href: address('offers.html', { ...next, cursor: answer.cursor }) }, 'The next ones')) : null,
      await history(answer.asked),
      addresses(answer),
    ],
  };
}

async function render(answer, query) {
  return answer.offer ? (await import('./offer-sheet.js')).offerSheet(answer) : listed(answer, query);
}

async function offerLists() {
  const [{ books }, known] = await Promise.all([askOnce('/api/books'), sellers()]);
  listForm.elements.book.replaceChildren(el('option', { value: '' }, 'Choose a book'), ...books.map(book => el('option', { value: book.book }, book.title)));
  listForm.elements.seller.replaceChildren(el('option', { value: '' }, 'Choose a seller'), ...known.map(one => el('option', { value: one.code }, one.name)));
}

listForm.addEventListener('focusin', async () => (await import('./price-list-sent.js')).keepMarkup(listForm), { once: true });
listForm.addEventListener('submit', async event => {
  event.preventDefault();
  (await import('./price-list.js')).judge(listForm, document.getElementById('list-answer'), document.getElementById('status')); // not before somebody has a list
});

bind({
  prepare, toApi, render,
  empty: () => el('p', { class: 'quiet' }, 'Write a number, or choose a family, or look at ', el('a', { href: address('offers.html', { pieces: '1' }) }, 'every offer'), '.'),
}).then(offerLists, offerLists);
