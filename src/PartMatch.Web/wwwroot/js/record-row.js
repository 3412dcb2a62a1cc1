// The sheet of one row: its form, its removal and its history.

import { ask } from './api.js';
import { address, el, keyText, section, sentence } from './format.js';
import { changesNode } from './history-changes.js';
import { rowAddress } from './history-words.js';
import { whoChanged } from './record-conflict.js';
import { editing } from './record-edit.js';
import { removal } from './record-remove.js';
import { rowName } from './record-words.js';

async function historyOf({ book, table, key }, undone) {
  const answer = await ask(`/api/history?${new URLSearchParams({ book, table, key, limit: '5' })}`).catch(() => null);
  if (!answer || answer.total === 0) return null;
  return section('History of this row', changesNode(answer, { undone }),
    answer.cursor ? el('p', null, el('a', { href: address('history.html', { book, table, key }) }, `All ${answer.total} changes`)) : null);
}

/** The sheet of a row that is there. `again(told)` draws the address anew and says what has happened. */
export async function showOne({ book, table, fields, answer, status, again }) {
  const { key, row, version, changed, permalink } = answer;
  const form = await editing({
    book, table, fields, row, version, link: permalink, status,
    saved(done, isNew) {
      const [now] = done.rows;
      history.replaceState(null, '', rowAddress(book, table, now.key));
      again(done.change === undefined
        ? 'Nothing was different from what is there, so nothing was stored.'
        : `${isNew ? 'Added' : 'Saved'} as change ${done.change}.`);
    },
  });
  const removed = done => {
    form.leave();
    history.replaceState(null, '', address('record.html', { book, table }));
    again(['Removed, as ', el('a', { href: address('history.html', { book, table, key }) }, `change ${done.change}`), ', which can be taken back.']);
  };
  return {
    title: sentence(rowName(table)), lead: el('span', { class: 'number' }, keyText(key)), detach: form.detach,
    content: [
      el('p', { class: 'small quiet' }, changed ? ['Last changed ', whoChanged(changed), '. '] : '',
        table === 'parts' ? [el('a', { href: address('part.html', { number: key }) }, 'Sheet of this part'), ' · '] : '',
        el('a', { class: 'asking', href: `${address('record.html', { book, table, copy: key })}&new` }, `Add a ${rowName(table)} like it`)),
      form.node,
      removal({ table, link: permalink, version: form.version, retract: form.retract, removed }),
      await historyOf({ book, table, key }, () => again('The change is taken back.')),
      el('p', { class: 'addresses small' }, el('a', { href: permalink }, 'The same as JSON')),
    ],
  };
}

/** The sheet for a row that is to be added; `begun` are the texts it begins with. */
export async function showNew({ book, table, fields, begun, status, again }) {
  const form = await editing({
    book, table, fields, row: null, begun, status,
    saved(done) {
      const [now] = done.rows;
      history.pushState(null, '', rowAddress(book, table, now.key));
      again([`Added as change ${done.change}. `, el('a', { href: `${address('record.html', { book, table, copy: now.key })}&new` }, 'Add another like it')]);
    },
  });
  return { title: `A new ${rowName(table)}`, lead: `Fill in what you know, with the evidence for it.`, content: form.node, detach: form.detach };
}

