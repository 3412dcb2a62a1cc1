// Who changed what, when and why; newest first, each change with the way back.

import { ask } from './api.js';
import { address, count, el } from './format.js';
import { changesNode } from './history-changes.js';
import { addresses, bind, choose, drawStrip } from './page.js';
import { shelves, tableName } from './record-words.js';

const form = document.querySelector('form[data-question]');
const { book, table } = form.elements;

drawStrip();

async function offer(query) {
  const { books } = await ask('/api/books');
  book.replaceChildren(el('option', { value: '' }, 'Every book'), ...books.map(one => el('option', { value: one.book }, `${one.book} – ${one.title}`)));
  table.replaceChildren(el('option', { value: '' }, 'Every table'), ...shelves.map(([name, tables]) =>
    el('optgroup', { label: name }, Object.keys(tables).map(code => el('option', { value: code }, tableName(code))))));
  choose(book, query.get('book'));
  choose(table, query.get('table'));
}

const summaryOf = ({ book: one, table: its, key }) => [key, its ? tableName(its) : '', one ?? ''].filter(Boolean).join(', ') || 'the whole base';

function render(answer) {
  const { asked, total, cursor } = answer;
  const about = summaryOf(asked);
  const headingOf = many => (many === 0 ? 'No change is recorded' : count(many, 'change'));
  const heading = el('h2', { 'data-first': true, tabindex: '-1' }, headingOf(total));
  return {
    title: `History of ${about}`, summary: `${about}.`, said: `${headingOf(total)}.`,
    content: [
      el('section', { class: 'headline' }, heading,
        el('p', null, 'Of ', about, asked.cursor ? ', from an older one on' : ', newest first', '. ',
          asked.cursor ? el('a', { href: address('history.html', { ...asked, cursor: null, limit: null }) }, 'Back to the newest') : '',
          asked.key ? el('a', { href: address('record.html', { book: asked.book, table: asked.table, key: asked.key }) }, 'Open the row as it is now') : '')),
      total === 0
        ? el('p', { class: 'quiet' }, 'What is changed by hand, brought in or taken back is told here with before and after.')
        : changesNode(answer, { undone: now => { heading.textContent = headingOf(now.total); } }),
      cursor ? el('p', null, el('a', { class: 'button', href: address('history.html', { ...asked, cursor }) }, 'Older changes')) : null,
      addresses(answer),
    ],
  };
}

bind({
  prepare: offer,
  toApi: query => (query.size ? `/api/history?${query}` : '/api/history'),
  render,
}).then(() => document.getElementById(location.hash.slice(1))?.focus());
