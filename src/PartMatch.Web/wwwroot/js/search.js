// Find a part by its number or by words of its name.

import { address, count, danger, el, partLink, plain, ruled } from './format.js';
import { whileTyping } from './number-typing.js';
import { addresses, bind, drawStrip } from './page.js';

drawStrip();
whileTyping(document.getElementById('q'), part => address('part.html', { number: part }));

function render(answer) {
  const heading = answer.total === 0 ? 'No part found' : count(answer.total, 'part');
  return {
    title: answer.asked.q,
    said: `${heading}.`,
    content: [
      el('section', { class: 'headline' }, el('h2', { 'data-first': true, tabindex: '-1' }, heading), answer.total === 0
        ? el('p', null, `Nothing recorded has “${answer.asked.q}” in its number or name. Try fewer words, or `, el('a', { href: address('look-alikes.html', { number: answer.asked.q }) }, 'the nearest known numbers'), '.')
        : el('p', { class: 'small quiet' }, 'Numbers that begin so first, then those that contain it, then names.')),
      answer.total === 0 ? null : ruled('Parts found', ['Number', 'Name', 'Kind', 'Maker', 'Can be taken for'], answer.parts.map(part => [
        partLink(part.part, part.number), part.name, plain(part.kind), part.maker,
        el('a', { href: address('look-alikes.html', { number: part.part }) }, part.lookAlikeDanger ? danger(part.lookAlikeDanger) : 'look-alikes', el('span', { class: 'unseen' }, part.lookAlikeDanger ? `: look-alikes of ${part.number}` : ` of ${part.number}`)),
      ]), { className: 'restack' }),
      answer.cursor ? el('p', null, el('a', { class: 'button', href: address('search.html', { q: answer.asked.q, cursor: answer.cursor }) }, 'The next ones')) : null,
      addresses(answer),
    ],
  };
}

bind({
  toApi: query => (query.size ? `/api/parts?${query}` : null),
  render,
  empty: () => el('p', { class: 'quiet' }, 'For example ', el('a', { href: address('search.html', { q: 'coolant pump' }) }, 'coolant pump'), ' or ', el('a', { href: address('search.html', { q: 'P-26' }) }, 'P-26'), '.'),
});
