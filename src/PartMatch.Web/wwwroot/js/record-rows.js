// The rows of one table of a book: filtered, a page at a time, each leading to its own sheet.

import { ask } from './api.js';
import { address, count, el, keyText, ruled } from './format.js';
import { fieldsOf, textsOf } from './record-fields.js';
import { codeWords, columnName, rowName, tableHolds, tableName } from './record-words.js';

const perPage = 50;

const record = question => address('record.html', question);

function condition(table, text) {
  const [column, ...value] = text.split(':');
  return `${columnName(table, column)}: ${value.join(':')}`;
}

function filter({ book, table, q, where }, columns) {
  const input = el('input', { id: 'is', class: 'typed', autocomplete: 'off', spellcheck: 'false' });
  const column = el('select', { id: 'column' }, columns.map(one => el('option', { value: one.column }, columnName(table, one.column))));
  const form = el('form', { class: q || where.length ? 'question' : 'question asking', action: 'record.html', role: 'search' },
    el('div', { class: 'cells' },
      el('div', { class: 'cell' }, el('label', { for: 'q' }, 'Some cell contains'),
        el('input', { id: 'q', name: 'q', type: 'search', value: q, autocomplete: 'off', spellcheck: 'false' })),
      el('div', { class: 'cell' }, el('label', { for: 'column' }, 'And the column'), column),
      el('div', { class: 'cell' }, el('label', { for: 'is' }, 'is exactly'), input)),
    where.length ? el('ul', { class: 'conditions' }, where.map(text => el('li', null, condition(table, text), ' ',
      el('a', { href: record({ book, table, q, where: where.filter(other => other !== text) }) }, 'drop',
        el('span', { class: 'unseen' }, ` the condition ${condition(table, text)}`))))) : null,
    el('div', { class: 'actions' }, el('button', null, 'Find')));
  form.addEventListener('submit', event => {
    event.preventDefault();
    const added = input.value.trim() ? [`${column.value}:${input.value.trim()}`] : [];
    location.assign(record({ book, table, q: form.elements.q.value.trim(), where: [...where, ...added] }));
  });
  return form;
}

const shownCell = (field, text) => (field.oneOf && text ? text.split('|').map(code => codeWords(field.name, code)).join(', ') : text);

function rowsTable(answer) {
  const { book, table } = answer.asked;
  const fields = fieldsOf(table, answer.columns).filter(field => !field.isKey);
  const texts = answer.rows.map(one => textsOf(fields, one.row));
  const used = fields.filter(field => texts.some(text => text[field.name]));
  return ruled(`${tableName(table)} of ${book}`, ['Row', ...used.map(field => field.label)], answer.rows.map((one, index) => [
    el('a', { href: record({ book: one.book, table, key: one.key }) }, keyText(one.key)),
    ...used.map(field => shownCell(field, texts[index][field.name])),
  ]), { className: 'restack records' });
}

/** @returns the sheet of a table, or throws what the server refused. */
export async function showRows(query) {
  const [book, table] = [query.get('book'), query.get('table')];
  const wanted = new URLSearchParams([['limit', perPage], ...['q', 'cursor'].filter(name => query.get(name)).map(name => [name, query.get(name)]),
    ...query.getAll('where').map(text => ['where', text])]);
  const answer = await ask(`/api/books/${encodeURIComponent(book)}/${encodeURIComponent(table)}?${wanted}`);
  const { q, where, cursor } = answer.asked;
  const known = Object.fromEntries(where.map(text => text.split(/:(.*)/s).slice(0, 2))); // what is filtered by is what a new row begins with
  const add = el('a', { class: 'button', href: `${record({ book, table, ...known })}&new` }, `Add a ${rowName(table)}`);
  const isFiltered = q || where.length > 0;
  const none = isFiltered ? 'No row is like that' : 'Nothing is recorded yet';
  const heading = answer.total === 0 ? none : `${count(answer.total, 'row')}${isFiltered ? ' found' : ''}${cursor ? ', from further on' : ''}`;
  return {
    title: tableName(table), lead: tableHolds(table),
    content: [
      el('p', { class: 'asking' }, add, ' ', el('a', { href: address('history.html', { book, table }) }, 'History of this table')),
      answer.total > 0 || isFiltered ? filter({ book, table, q, where }, answer.columns) : null,
      el('h2', null, heading),
      answer.rows.length ? rowsTable(answer) : el('p', { class: 'quiet' },
        isFiltered ? ['Ask for less, or ', el('a', { href: record({ book, table }) }, 'show all rows'), '.'] : `The first ${rowName(table)} is yours to add.`),
      cursor || answer.cursor ? el('p', { class: 'pages' }, cursor ? [el('a', { href: record({ book, table, q, where }) }, 'From the beginning'), ' '] : '',
        answer.cursor ? el('a', { class: 'button', href: record({ book, table, q, where, cursor: answer.cursor }) }, 'The next rows') : '') : null,
      el('p', { class: 'addresses small' }, el('a', { href: answer.permalink }, 'The same as JSON')),
    ],
  };
}
