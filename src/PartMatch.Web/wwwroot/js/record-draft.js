// What was typed and not yet saved: kept in this tab for the address of the row, offered back when the page is opened again.

import { el } from './format.js';
import { moment } from './history-words.js';

const nameOf = address => `partmatch-draft ${address}`;

/**
 * Watches a form. `read()` gives what is typed as `{texts, …}`, `isChanged()` whether it differs from what is in the base.
 * Leaving the page is warned of while it does.
 */
export function draftOf(address, { read, isChanged }) {
  const name = nameOf(address);
  const warn = event => { if (isChanged()) event.preventDefault(); };
  window.addEventListener('beforeunload', warn);
  return {
    keep() {
      if (isChanged()) sessionStorage.setItem(name, JSON.stringify({ ...read(), at: new Date().toISOString() }));
      else sessionStorage.removeItem(name);
    },
    forget: () => sessionStorage.removeItem(name),
    end: () => window.removeEventListener('beforeunload', warn),
  };
}

/** What was typed at this address before, or null. */
export function findDraft(address) {
  try {
    return JSON.parse(sessionStorage.getItem(nameOf(address)));
  } catch {
    return null; // not written by this page
  }
}

export const forgetDraft = address => sessionStorage.removeItem(nameOf(address));

/** Offers a draft: it is put into the form only by hand. */
export function draftOffer(draft, labels, { take, forget }) {
  const offer = el('div', { class: 'notice draft', role: 'group', 'aria-label': 'What you typed before' },
    el('p', null, el('strong', null, 'You typed something here and did not save it'), ', ', moment(draft.at), labels.length ? `: ${labels.join(', ')}.` : '.'),
    el('p', { class: 'buttons' },
      el('button', { type: 'button', onclick: () => { offer.remove(); take(); } }, 'Fill in what I typed'),
      el('button', { type: 'button', class: 'plain', onclick: () => { offer.remove(); forget(); } }, 'Throw it away')));
  return offer;
}
