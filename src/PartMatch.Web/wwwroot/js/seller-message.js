// What to write to a seller, ready to be copied, and the photographs to ask for.

import { el, plain, section, sentence, sentences } from './format.js';
import { balloons } from './tell-apart-key.js';

/** Copies the text; where the page may not reach the clipboard it selects it instead. Gives the sentence that says which. */
async function copy(area) {
  try {
    await navigator.clipboard.writeText(area.value);
    return 'Copied.';
  } catch {
    // No clipboard outside a secure address, or the browser forbids it: the reader's own key still works.
    area.focus();
    area.select();
    return 'The browser does not let the page copy. The text is selected: copy it with Ctrl+C or ⌘C.';
  }
}

export function messageBox(text) {
  const said = el('span', { role: 'status', class: 'copied' });
  const area = el('textarea', { id: 'message', readonly: true, rows: Math.min(24, text.split('\n').length + 2) }, text);
  return [
    el('label', { for: 'message' }, 'Message to the seller'), area,
    el('p', { class: 'actions' }, el('button', { type: 'button', onclick: async () => { said.textContent = ''; said.textContent = await copy(area); } }, 'Copy'), said),
  ];
}

/** Pairs as “A B from C D; C from D”: those that are parted from the same others stand together. */
function split(pairs, tags) {
  const others = Map.groupBy(pairs, ([one]) => one);
  const alike = Map.groupBy(others.keys(), one => others.get(one).map(([, other]) => other).join(' '));
  return [...alike.values()].map((ones, index) => [index ? '; ' : '', balloons(ones, tags), ' from ', balloons(others.get(ones[0]).map(([, other]) => other), tags)]);
}

export function sellerMessage({ text, questions, shots }, tags) {
  return section('Ask the seller',
    messageBox(text),
    questions.length ? [el('h3', null, 'What each question parts'), el('ul', { class: 'parting' }, questions.map(one => el('li', null, sentence(one.name), ': ', split(one.splits, tags))))] : null,
    shots.length ? [el('h3', null, 'Photographs to ask for'), el('dl', { class: 'facts shots' }, shots.map(one => [el('dt', null, sentence(one.name)), el('dd', null, one.how ? sentences(one.how) : plain(one.shot))]))] : null);
}
