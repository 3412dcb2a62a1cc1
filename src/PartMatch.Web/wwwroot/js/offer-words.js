// How offers and sellers are spoken of: money, days, terms. What is not recorded reads as such, never as nothing.

import { count, el } from './format.js';

export const money = amount => (amount ? `${amount.amount} ${amount.currency}` : 'not known');

/** The code of a seller or an offer without its book. */
export const codeOf = reference => reference.slice(reference.indexOf('/') + 1);

const conditions = { 'new': 'new', 'refurbished': 'refurbished', 'used': 'used', 'damaged': 'damaged, or for parts', 'not-stated': 'condition not stated' };
const levels = { 'bare': 'the bare casting', 'short': 'with crankshaft, rods and pistons', 'long': 'with head and valve gear', 'complete': 'complete', 'heard-running': 'complete, heard running' };

export const conditionText = ({ condition, level }) => [conditions[condition] ?? condition, levels[level]].filter(Boolean).join('; ');

/** Days from order to door; both ends, one, or neither known. */
export function daysText({ daysMin, daysMax }) {
  if (daysMin === undefined && daysMax === undefined) return 'not known';
  if (daysMin === daysMax) return count(daysMin, 'day');
  if (daysMax === undefined) return `${count(daysMin, 'day')} or more`;
  return daysMin === undefined ? `up to ${count(daysMax, 'day')}` : `${daysMin} to ${count(daysMax, 'day')}`;
}

const paid = { buyer: 'the buyer pays the way back', seller: 'the seller pays the way back' };

/** On what terms a part goes back. */
export function returnsText({ returnable, days, restockingPercent, freightBack, corePart }) {
  const window = returnable === 'no' || days === 0 ? 'not taken back' : days === undefined ? (returnable === 'yes' ? 'taken back, days not known' : 'not known whether it is taken back') : `within ${count(days, 'day')}`;
  const kept = window === 'not taken back' || restockingPercent === undefined ? '' : restockingPercent === 0 ? 'nothing kept' : `${restockingPercent}\u00a0% kept`;
  return [window, kept, paid[freightBack], corePart ? `old part that counts: ${corePart}` : ''].filter(Boolean).join('; ');
}

/** The cost at the door: the sum where it is known, else what it comes to at least, with what is missing. */
export function doorCost({ total, atLeast, notKnown, coreDeposit, shortBy, surplus }) {
  const sum = total ? el('strong', null, money(total)) : atLeast ? [el('strong', null, `at least ${money(atLeast)}`), el('p', { class: 'small' }, `Not known: ${notKnown.join(', ')}.`)] : `not known: ${notKnown[0]}`;
  return [sum,
    coreDeposit ? el('p', { class: 'small' }, `Besides ${money(coreDeposit)} deposit for the old part.`) : null,
    surplus ? el('p', { class: 'small' }, `${count(surplus, 'piece')} more than asked for come with it.`) : null,
    shortBy ? el('p', { class: 'small' }, `The seller has ${count(shortBy, 'pack')} too few.`) : null];
}
