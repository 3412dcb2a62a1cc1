// What the sheets of buying and goods in share: telling what happened, and saying what stood against it.

import { Refusal } from './api.js';
import { keptName, signature, today, write } from './editor.js';
import { faultSummary } from './faults.js';
import { fold } from './fold.js';
import { el } from './format.js';

export const stateWords = {
  ordered: 'on the way', arrived: 'there, not looked at', checked: 'checked and right', wrong: 'wrong', returned: 'sent back', refunded: 'sent back, money back', cancelled: 'cancelled',
};

export const actWords = {
  ordered: 'ordered', paid: 'paid', arrived: 'arrived', checked: 'checked and right', wrong: 'found wrong', returned: 'sent back', refunded: 'money came back', cancelled: 'cancelled',
  'deposit-back': 'deposit came back', 'deposit-kept': 'deposit kept by the seller', charged: 'charged for taking it back', withdrawn: 'told by mistake',
};

/** Who tells it: kept by this browser, typed once on the sheet. */
export const teller = () => signature({ why: 'Why' });

/** Its fields, folded; nothing of it on paper. */
export function tellerFold(by) {
  const place = fold('Who tells it', '', by.cells);
  place.classList.add('who-tells');
  return place;
}

/** Sends one thing and asks the sheet anew; what was refused stands at `place`. */
export async function tell(place, address, { body, version, by, again }) {
  try {
    await write(address, { body, version, note: by ? by.read() : { who: keptName() } });
    again();
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    if (error.problem.status === 401) by?.askForToken();
    place.querySelector('.refused')?.remove();
    place.append(el('div', { class: 'refused' }, faultSummary(null, error.problem),
      error.problem.status === 412 ? el('p', { class: 'buttons' }, el('button', { type: 'button', onclick: again }, 'Show it as it is now')) : null));
    place.querySelector('.refused').firstElementChild.focus();
  }
}

/** A labelled field of a small form. */
export function field(label, control) {
  return el('div', { class: 'cell' }, el('label', null, label, control));
}

export const dayField = () => el('input', { name: 'on', type: 'date', value: today() });

/** Shows of a small form what this act asks for; what is hidden is not sent. */
export function showFor(form, act, asked) {
  for (const control of form.querySelectorAll('[name]')) {
    const names = asked[control.name];
    control.disabled = Boolean(names) && !names.includes(act);
    control.closest('.cell').hidden = control.disabled;
  }
}

/** What a form holds: texts that were filled in, numbers as numbers. */
export function read(form, numbers = []) {
  const typed = [...new FormData(form)].filter(([, text]) => text.trim() !== '');
  return Object.fromEntries(typed.map(([name, text]) => [name, numbers.includes(name) && Number.isFinite(Number(text)) ? Number(text) : text.trim()]));
}

export const sheetHead = (title, ...below) => [el('h2', { 'data-first': true, tabindex: '-1' }, title), ...below];

export const printButton = text => el('button', { type: 'button', class: 'plain', onclick: () => window.print() }, text);
