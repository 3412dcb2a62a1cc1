// What happens when a part is forced into a position: what it costs more, which lines change with it, or what it breaks.

import { conflictTable } from './build-conflict.js';
import { count, el, facts, linked, ruled, sentence, sentences } from './format.js';
import { money } from './offer-words.js';

function more(amount) {
  if (!amount) return '';
  const by = Number(amount.amount);
  return by === 0 ? 'the same' : by > 0 ? `${money(amount)} more` : `${money({ ...amount, amount: amount.amount.replace('-', '') })} less`;
}

function days(many) {
  if (many === undefined) return '';
  return many === 0 ? 'the same day' : many > 0 ? `${count(many, 'day')} later` : `${count(-many, 'day')} sooner`;
}

/** Lines that are otherwise, was and becomes. */
export const changesTable = (caption, changes) => ruled(caption, ['Position', 'Was', 'Becomes'], changes.map(change => [
  sentence(change.name), linked(change.was), linked(change.becomes),
]), { className: 'restack slim' });

export function whyNotAnswer(answer) {
  return el('section', { class: 'forced', 'data-status': answer.status },
    el('h4', { tabindex: '-1' }, answer.headlineText),
    facts([['It costs', more(answer.costMore)], ['It is ready', days(answer.daysMore)]]),
    answer.changes.length ? changesTable('Lines that are then otherwise', answer.changes) : null,
    answer.conflict?.members.length ? [el('p', null, sentences(answer.conflict.headlineText)), conflictTable(answer.conflict.members)] : null,
    el('p', { class: 'small acts' }, el('a', { href: answer.permalink }, 'The same as JSON')));
}
