// Somebody else saved the same row meanwhile: both versions side by side, and for each field which of them to take.

import { el, ruled } from './format.js';
import { moment } from './history-words.js';

/** Who changed it, when and why, in a sentence. */
export function whoChanged(changed) {
  if (!changed) return '';
  return [`by ${changed.who ?? 'somebody unnamed'}, `, moment(changed.at), changed.why ? [', because “', changed.why, '”'] : ''];
}

/** Mine where I changed something, theirs where I did not. */
export const merged = (fields, { base, mine, theirs }) =>
  Object.fromEntries(fields.map(({ name }) => [name, mine[name] === base[name] ? theirs[name] : mine[name]]));

function side(field, whose, text, isTaken, take) {
  const id = `take-${field.name}-${whose}`;
  return el('label', { class: 'choice', for: id },
    el('input', { type: 'radio', id, name: `take-${field.name}`, checked: isTaken, onchange: () => take(field.name, text) }),
    el('span', null, text || el('i', null, 'empty'), el('span', { class: 'unseen' }, ` (${whose})`)));
}

/**
 * The two versions. `take(name, text)` puts one into the form, `save()` sends the form.
 * @param versions `{base, mine, theirs}`: what both began with, what was typed, what is there now.
 */
export function conflict({ fields, versions, changed, take, save }) {
  const { base, mine, theirs } = versions;
  const apart = fields.filter(({ name }) => mine[name] !== theirs[name]);
  const rows = apart.map(field => {
    const isMine = mine[field.name] !== base[field.name];
    return [field.label, base[field.name] || '–', side(field, 'theirs', theirs[field.name], !isMine, take),
      side(field, 'yours', mine[field.name], isMine, take)];
  });
  const both = apart.filter(({ name }) => mine[name] !== base[name] && theirs[name] !== base[name]).length;
  return el('section', { class: 'conflict', tabindex: '-1', 'aria-labelledby': 'conflict-title' },
    el('h2', { id: 'conflict-title' }, 'Somebody else changed this row while you were at it'),
    el('p', null, 'Theirs is stored: ', whoChanged(changed) || 'by somebody unnamed', '. Yours is not stored yet, and nothing you typed is lost.'),
    apart.length === 0 ? el('p', null, 'Both come to the same: there is nothing left to save.') : [
      ruled('Where the two differ', ['', 'It was', 'Theirs', 'Yours'], rows, { className: 'restack versions' }),
      el('p', null, both === 0
        ? 'You changed different fields: both changes can stand.'
        : 'Where both changed the same field, yours is picked. Look at it before you save.'),
      el('p', { class: 'buttons' }, el('button', { type: 'button', onclick: save }, 'Save what is picked')),
    ]);
}

/** The row is gone: what was typed can be added again. */
export function goneMeanwhile({ changed, again }) {
  return el('section', { class: 'conflict', tabindex: '-1', 'aria-labelledby': 'conflict-title' },
    el('h2', { id: 'conflict-title' }, 'Somebody else removed this row while you were at it'),
    el('p', null, 'It was removed ', whoChanged(changed) || 'by somebody unnamed', '. What you typed is still in the form below.'),
    el('p', { class: 'buttons' }, el('button', { type: 'button', onclick: again }, 'Add it again with what is typed')));
}
