// What every page that writes shares: who writes and why, the edit token where the server has one, and the request itself.

import { ask } from './api.js';
import { el } from './format.js';

const tokenName = 'partmatch-token';
const personName = 'partmatch-name';
let signatures = 0;

/** The reader's own date, as books write it. */
export function today() {
  const now = new Date();
  return [now.getFullYear(), now.getMonth() + 1, now.getDate()].map(part => String(part).padStart(2, '0')).join('-');
}

/** The token typed in this tab, or ''. It is kept until the tab is closed, nowhere else. */
export const keptToken = () => sessionStorage.getItem(tokenName) ?? '';

export function keepToken(token) {
  if (token) sessionStorage.setItem(tokenName, token);
  else sessionStorage.removeItem(tokenName);
}

/** The name that this browser's user goes by in the history, or ''. */
export const keptName = () => localStorage.getItem(personName) ?? '';

function keepName(name) {
  if (name) localStorage.setItem(personName, name);
  else localStorage.removeItem(personName);
}

/** The header that carries the token; empty without one. */
export const authorization = () => (keptToken() ? { Authorization: `Bearer ${keptToken()}` } : {});

/**
 * Sends a change: a `body`, or its text as `json`. `note` is what a signature reads; `version` that of the row as it was seen.
 * A Refusal carries the problem; nothing is stored then.
 */
export function write(address, { method = 'POST', body, json = body === undefined ? undefined : JSON.stringify(body), version, note = {} } = {}) {
  const said = new URLSearchParams(Object.entries(note).filter(([, text]) => text));
  const headers = {
    ...(json === undefined ? {} : { 'Content-Type': 'application/json' }), ...(version === undefined ? {} : { 'If-Match': `"${version}"` }), ...authorization(),
  };
  const joined = said.size ? `${address}${address.includes('?') ? '&' : '?'}${said}` : address;
  return ask(joined, { method, headers, body: json });
}

/**
 * The fields for who and why, and the one for the token, which shows only where one was typed before or `askForToken` was called.
 * `read()` gives `{who, why}` and remembers name and token.
 */
export function signature({ why: question = 'Why' } = {}) {
  const id = `signature-${signatures += 1}`;
  const field = (name, label, hint, attributes) => el('div', { class: 'cell' }, el('label', { for: `${id}-${name}` }, label),
    el('input', { id: `${id}-${name}`, name, autocomplete: 'off', 'aria-describedby': `${id}-${name}-hint`, ...attributes }),
      el('p', { class: 'hint', id: `${id}-${name}-hint` }, hint));
  const who = field('who', 'Your name', 'Stands in the history beside what you change. This browser remembers it.',
    { maxlength: 80, value: keptName(), autocomplete: 'name' });
  const why = field('why', question, 'If you like: a word to whoever reads the history later.', { maxlength: 500 });
  const token = field('token', 'Edit token', 'This server asks for one. Kept until this tab is closed, nowhere else.',
    { type: 'password', 'data-field': 'Authorization', value: keptToken() });
  token.hidden = !keptToken();
  const input = cell => cell.querySelector('input');
  return {
    cells: [who, why, token],
    why: input(why),
    askForToken: () => { token.hidden = false; },
    read() {
      const said = { who: input(who).value.trim(), why: input(why).value.trim() };
      keepName(said.who);
      keepToken(input(token).value);
      return said;
    },
  };
}
