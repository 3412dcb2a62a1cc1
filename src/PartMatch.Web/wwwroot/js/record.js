// One address for everything that stands in the books: the shelf, a table, a row, or a row that is still to be written.

import { Refusal, ask } from './api.js';
import { faultSummary } from './faults.js';
import { address, el, keyText } from './format.js';
import { rowAddress } from './history-words.js';
import { drawStrip } from './page.js';
import { fieldsOf, textsOf } from './record-fields.js';
import { showRows } from './record-rows.js';
import { showBooks, showTables } from './record-tables.js';
import { rowName, tableName } from './record-words.js';

const place = document.getElementById('answer');
const status = document.getElementById('status');
const heading = document.querySelector('h1');
const lead = document.querySelector('.lead');
const trail = document.getElementById('trail');
const name = document.title;
let shown = null;

const api = (book, table, key) => ['/api/books', ...[book, table, key].filter(step => step !== undefined).map(encodeURIComponent)].join('/');

function drawTrail(query) {
  const [book, table] = [query.get('book'), query.get('table')];
  const steps = [['Parts books', 'books.html'], ['Records', 'record.html'], book && [book, address('record.html', { book })],
    table && [tableName(table), address('record.html', { book, table })]].filter(Boolean);
  const isRow = query.has('key') || query.has('new');
  const above = isRow ? steps : steps.slice(0, -1);
  trail.replaceChildren(...above.map(([text, href]) => el('li', null, el('a', { href }, text))), el('li', { 'aria-current': 'page' }, heading.textContent));
}

/** Its row in one of the books that this one uses; a code is looked for in the own book first. */
async function findInUsed(book, table, key, columns) {
  const keys = columns.filter(column => column.key);
  const cells = key.split(',').map(decodeURIComponent);
  const where = keys.flatMap((column, index) => (cells[index] ? [['where', `${column.column}:${cells[index]}`]] : []));
  const { rows } = await ask(`${api(book, table)}?${new URLSearchParams([['used', 'true'], ['limit', '2'], ...where])}`);
  return rows.find(row => row.key === key) ?? null;
}

async function showGone(book, table, key, columns) {
  const elsewhere = await findInUsed(book, table, key, columns);
  if (elsewhere) {
    location.replace(rowAddress(elsewhere.book, table, key));
    return { title: 'In another book', lead: '', content: [] };
  }

  return {
    title: `No such ${rowName(table)}`, lead: el('span', { class: 'number' }, keyText(key)),
    content: el('p', { class: 'notice' }, `Neither ${book} nor a book that it uses has this row. It may have been removed, or its key changed: `,
      el('a', { href: address('history.html', { book, table, key }) }, 'its history'), ' tells. ',
        el('a', { href: address('record.html', { book, table }) }, `All ${tableName(table).toLowerCase()} of the book`), ', or ',
      el('a', { href: `${address('record.html', { book, table })}&new` }, `add a ${rowName(table)}`), '.'),
  };
}

async function begin(query, book, table, fields) {
  const copied = query.get('copy') ? textsOf(fields, (await ask(api(book, table, query.get('copy')))).row) : {};
  return Object.fromEntries(fields.map(field => [field.name, query.get(field.name) ?? copied[field.name] ?? '']));
}

async function sheetOf(query) {
  const [book, table, key] = ['book', 'table', 'key'].map(one => query.get(one) || undefined);
  if (!book) return showBooks();
  if (!table) return (await showTables(book)) ?? showRows(new URLSearchParams({ book, table: 'book' })); // the server says that there is no such book
  if (key === undefined && !query.has('new')) return showRows(query);
  const { columns } = await ask(`${api(book, table)}?limit=1`);
  const fields = fieldsOf(table, columns);
  const about = { book, table, fields, status, again: draw };
  const { showNew, showOne } = await import('./record-row.js'); // not before a row is opened: the list of books loads without its forms
  if (key === undefined) return showNew({ ...about, begun: await begin(query, book, table, fields) });
  try {
    return await showOne({ ...about, answer: await ask(api(book, table, key)) });
  } catch (error) {
    if (error instanceof Refusal && error.problem.status === 404) return showGone(book, table, key, columns);
    throw error;
  }
}

/** Draws what the address asks for; `told` is what has just happened. */
let shownFor; // a skip link changes the address too, and nothing of it is to be drawn again

async function draw(told) {
  shownFor = location.search;
  const query = new URLSearchParams(shownFor);
  shown?.detach?.();
  place.setAttribute('aria-busy', 'true');
  if (!told) place.replaceChildren(el('p', { class: 'waiting' }, 'Opening the book …'));
  try {
    shown = await sheetOf(query);
    heading.replaceChildren(shown.title);
    lead.replaceChildren(shown.lead);
    document.title = `${[shown.title, query.get('key') ?? query.get('book')].filter(Boolean).join(' ')} – ${name}`;
    place.replaceChildren(...[told ? el('p', { class: 'notice done', tabindex: '-1' }, told) : null, shown.content].flat(Infinity).filter(Boolean));
    status.textContent = told ? '' : `${shown.title}.`;
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    place.replaceChildren(faultSummary(null, error.problem), el('p', { class: 'buttons' }, el('a', { href: location.href }, 'Try again')));
    place.firstChild.focus();
  } finally {
    drawTrail(query);
    place.removeAttribute('aria-busy');
  }

  place.querySelector('.done')?.focus();
}

drawStrip();
window.addEventListener('popstate', () => location.search === shownFor || draw());
draw();
