// The shelf: which books there are, and which tables a book holds, in words.

import { ask } from './api.js';
import { address, count, el, section } from './format.js';
import { shelves, tableHolds, tableName } from './record-words.js';

const familyOnly = ['variants', 'engine', 'positions', 'access', 'fitments', 'needs', 'joints', 'stacks', 'selects', 'companions', 'findings', 'torques', 'openings', 'bench-order', 'renewals', 'weak-points'];

const record = question => address('record.html', question);

function shelf(book, tables, rows) {
  return tables.length === 0 ? null : el('ul', { class: 'shelf' }, tables.map(table => el('li', null,
    el('a', { href: record({ book, table }) }, tableName(table)), ' ', el('span', { class: 'quiet small' }, rows[table] ? count(rows[table], 'row') : 'empty'),
    el('p', { class: 'quiet' }, tableHolds(table)))));
}

export async function showBooks() {
  const { books } = await ask('/api/books');
  return {
    title: 'Which book?',
    lead: 'Every fact stands in a parts book. Open the one that it belongs to.',
    content: books.length === 0
      ? el('p', { class: 'notice' }, 'The base is empty. ', el('a', { href: 'books.html' }, 'Bring a parts book in'), '.')
      : el('ul', { class: 'shelf' }, books.map(book => el('li', null, el('a', { href: record({ book: book.book }) }, book.title), ` ${book.book}`,
        book.note ? el('p', { class: 'quiet' }, book.note) : null))),
  };
}

export async function showTables(code) {
  const { books } = await ask('/api/books');
  const book = books.find(one => one.book === code);
  if (!book) return null;
  const rows = Object.fromEntries(book.counts.map(({ file, rows: many }) => [file.replace(/\.csv$/, ''), many]));
  const isHeld = table => book.kind === 'family' || !familyOnly.includes(table);
  return {
    title: book.title,
    lead: 'Pick what you want to look up, add or put right. Everything you change is kept in the history and can be taken back.',
    content: [
      shelves.map(([name, tables]) => section(name, shelf(code, Object.keys(tables).filter(isHeld), rows))),
      el('p', { class: 'small' }, el('a', { href: address('history.html', { book: code }) }, 'History of this book')),
    ],
  };
}
