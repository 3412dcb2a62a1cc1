// One offer: what it is, what it costs at the door, and the words of the listing as they were kept.

import { address, el, facts, linked, partLink, rowKey, section, sentence, ways } from './format.js';
import { conditionText, daysText, money, returnsText } from './offer-words.js';
import { addresses } from './page.js';

const isWebAddress = text => /^https?:\/\//.test(text ?? '');

function words(kept) {
  if (!kept) return section('What the listing said', el('p', null, 'The words it was read from are not kept.'));
  return section('What the listing said',
    facts([['Title', kept.title], ['Address', isWebAddress(kept.address) ? el('a', { href: kept.address, rel: 'noreferrer noopener nofollow' }, kept.address) : kept.address], ['Seen on', kept.seenOn], ['SHA-256', el('span', { class: 'number small' }, kept.listing)]]),
    el('blockquote', null, kept.text.split('\n').map(line => el('p', null, line))));
}

export function offerSheet(answer) {
  const one = answer.offer;
  const heading = `${one.number}${one.name ? ` ${one.name}` : ''}, ${money(one.price)}`;
  return {
    title: heading,
    summary: `offer ${one.offer}.`,
    said: `${heading}. ${sentence(one.age.text)}.`,
    content: [
      el('section', { class: 'headline' }, el('h2', { 'data-first': true, tabindex: '-1' }, heading), one.age.old ? el('p', { class: 'notice' }, `${sentence(one.age.text)}.`) : null,
        facts([
          ['Part', one.part ? partLink(one.part) : 'in no book'], ['Seller', el('a', { href: address('sellers.html', { seller: one.seller }) }, one.sellerName)], ['Condition', sentence(conditionText(one))],
          ['Pieces for the price', one.pack === undefined ? 'not known' : String(one.pack)], ['A piece', one.unitPrice ? money(one.unitPrice) : ''], ['Packs in stock', one.stock === undefined ? 'not known' : String(one.stock)],
          [`At the door, ${one.landed.pieces} wanted`, [linked(one.landed.text), one.landed.import.missing ? el('p', { class: 'small quiet' }, `To know the import charge: ${one.landed.import.missing}.`) : null]], ['On the way', daysText(one)], ['Sent back', sentence(returnsText(one.returns))], ['Seen on', `${one.age.seenOn}, ${one.age.text}`],
          ['Note', one.note], ['Book', el('a', { href: address('record.html', { book: one.book }) }, one.book)],
        ]),
        ways(['Edit this offer', address('record.html', { book: one.book, table: 'offers', key: rowKey(one.offer) })], ['Every offer of this number', address('offers.html', { part: one.part ?? one.number })],
          ['What can be taken for it', address('look-alikes.html', { number: one.part ?? one.number })], ['History', address('history.html', { book: one.book, table: 'offers', key: rowKey(one.offer) })])),
      words(one.kept),
      addresses(answer),
    ],
  };
}
