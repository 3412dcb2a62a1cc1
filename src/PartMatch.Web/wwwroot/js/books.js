// Parts books: what is in the base, taking one out, bringing one in.

import { Refusal, ask } from './api.js';
import { readLines } from './build-stream.js';
import { authorization, keepToken, keptToken } from './editor.js';
import { clearFaults, faultSummary } from './faults.js';
import { address, count, el, facts, grouped, ruled, ways } from './format.js';
import { drawStrip } from './page.js';

const form = document.getElementById('import');
const list = document.getElementById('books');
const place = document.getElementById('answer');
const status = document.getElementById('status');

drawStrip();

function counts(book) {
  const rows = book.counts.reduce((sum, one) => sum + one.rows, 0);
  return el('details', { class: 'kept' }, el('summary', null, `${count(rows, 'row')} in ${count(book.counts.length, 'file')}`),
    el('ul', { class: 'bare' }, book.counts.map(one => el('li', null, el('span', { class: 'number' }, one.file), ` ${one.rows}`))));
}

async function drawBooks() {
  list.replaceChildren(el('p', { class: 'waiting' }, 'Reading the base …'));
  try {
    const { books } = await ask('/api/books');
    mergeForm.elements.book.replaceChildren(el('option', { value: '' }, 'Choose a book'), ...books.map(book => el('option', { value: book.book }, book.title)));
    list.replaceChildren(books.length === 0 ? el('p', { class: 'notice' }, 'The base is empty. Bring a book in below.') : ruled('Books in the base', ['Book', 'What it is', 'Builds on', 'Licence', 'Size', 'Take it out'], books.map(book => [
      book.book, [book.title, book.note ? el('div', { class: 'quiet' }, book.note) : '',
        ways(['Open', address('record.html', { book: book.book })], ['History', address('history.html', { book: book.book })], ['Near numbers', address('near-pairs.html', { book: book.book })])], book.uses.join(', ') || '–', book.licence ?? 'not recorded', counts(book),
      el('a', { href: `/api/books/${encodeURIComponent(book.book)}`, download: `${book.book}.zip` }, `${book.book}.zip`),
    ]), { className: 'restack' }));
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    list.replaceChildren(faultSummary(null, error.problem));
  }
}

function faultTable(problem) {
  const inFiles = problem.errors.filter(error => error.file);
  return inFiles.length === 0 ? null : ruled('Faults in the book', ['File', { text: 'Line', class: 'count' }, 'Column', 'Found', 'What is wrong', 'How to mend it'], inFiles.map(error => [
    el('span', { class: 'number' }, error.file), error.line === undefined ? '–' : String(error.line), error.column ?? '–', el('span', { class: 'number' }, error.found), error.reason ?? error.expected, error.mend ?? '',
  ]), { className: 'restack' });
}

// Faults in files stand in the table below, so the summary leaves them out.
const summaryOf = (at, problem) => faultSummary(at, problem.errors.some(error => error.file) ? { ...problem, errors: [] } : problem);

function refuse(problem) {
  const summary = summaryOf(form, problem);
  place.replaceChildren(summary);
  const table = faultTable(problem);
  if (table) place.append(table);
  status.textContent = '';
  summary.focus();
}

const outcomes = { 'added': 'The book is in the base', 'replaced': 'The book took the place of the old one', 'would-add': 'No fault found: it would be added', 'would-replace': 'No fault found: it would replace the old one' };

function tell(answer) {
  const rows = answer.counts.reduce((sum, one) => sum + one.rows, 0);
  const heading = el('h2', { tabindex: '-1' }, outcomes[answer.outcome]);
  place.replaceChildren(el('section', { class: 'headline' }, heading, facts([['Book', answer.book], ['Read', `${count(rows, 'row')} in ${count(answer.counts.length, 'file')}`], ['Stored', answer.asked.dryRun ? 'nothing: this was only a check' : 'all of it']])));
  status.textContent = `${outcomes[answer.outcome]}.`;
  heading.focus();
}

const stages = {
  'reading': 'lines read', 'checking-cells': 'rows checked, cell by cell', 'checking-references': 'rows checked for what they name',
  'checking-meaning': 'rows checked for what they say',
  'storing': 'rows stored', 'recording': 'rows told of in the history',
};

/** What stands there while a book comes in; `stop` ends it, until it is too late for that. */
function waiting(stop) {
  const far = el('p', { class: 'waiting' }, 'Sending the zip …');
  const bar = el('progress', { class: 'progress', 'aria-label': 'How far it is' });
  const end = () => { button.disabled = true; far.textContent = 'Stopping …'; stop(); };
  const button = el('button', { type: 'button', onclick: end }, 'Stop, and keep nothing');
  place.replaceChildren(far, bar, el('p', { class: 'buttons' }, button));
  let stage = '';
  return progress => {
    if (button.disabled) return;
    const words = stages[progress.stage];
    far.textContent = words ? `${grouped(progress.rows)} of ${grouped(progress.total)} ${words}`
      : 'All rows stand; writing the last of it. It can no longer be stopped.';
    if (!words) button.remove();
    bar.max = progress.total;
    bar.value = words ? progress.rows : progress.total;
    if (progress.stage !== stage) status.textContent = far.textContent;
    stage = progress.stage;
  };
}

async function send(file) {
  const { mode, token } = form.elements;
  const query = new URLSearchParams({ mode: mode.value, 'dry-run': String(form.elements['dry-run'].checked) });
  keepToken(token.value);
  const headers = { 'Content-Type': 'application/zip', ...authorization() };
  const stopping = new AbortController();
  const told = waiting(() => stopping.abort());
  return readLines(`/api/books?${query}`, { method: 'POST', headers, body: file, signal: stopping.signal, told });
}

function stopped() {
  const notice = el('p', { class: 'notice', tabindex: '-1' }, 'Stopped. Nothing of this book was stored; what the base had is as it was.');
  place.replaceChildren(notice);
  status.textContent = 'Stopped.';
  notice.focus();
}

form.addEventListener('submit', async event => {
  event.preventDefault();
  clearFaults(form);
  const [file] = form.elements.zip.files;
  if (!file) {
    refuse({ type: '', title: 'No file is chosen', errors: [{ field: 'zip', found: '', expected: 'the zip of a parts book', mend: 'choose the file' }] });
    return;
  }

  const button = form.querySelector('.actions button');
  button.disabled = true;
  status.textContent = 'Sending the zip.';
  try {
    tell(await send(file));
    await drawBooks();
  } catch (error) {
    if (error.name === 'AbortError') stopped();
    else if (error instanceof Refusal) refuse(error.problem);
    else throw error;
  } finally {
    button.disabled = false;
  }
});

const mergeForm = document.getElementById('merge');
const mergePlace = document.getElementById('merge-answer');

async function readOther() {
  const [zip] = mergeForm.elements.other.files;
  const [field, expected] = mergeForm.elements.book.value === '' ? ['book', 'the book to merge into'] : ['other', 'the zip of another state of the book'];
  if (!zip || field === 'book') throw new Refusal({ type: '', title: 'Something is missing', errors: [{ field, found: '', expected, mend: 'choose it' }] });
  mergePlace.replaceChildren(el('p', { class: 'waiting' }, 'Laying the two beside each other …'));
  const { mergeOf } = await import('./books-merge.js');
  const { node, focus } = await mergeOf({ book: mergeForm.elements.book.value, zip, status, merged: drawBooks });
  mergePlace.replaceChildren(node);
  focus();
}

mergeForm.addEventListener('submit', async event => {
  event.preventDefault();
  clearFaults(mergeForm);
  const button = mergeForm.querySelector('.actions button');
  button.disabled = true;
  keepToken(form.elements.token.value);
  mergePlace.setAttribute('aria-busy', 'true');
  try {
    await readOther();
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const summary = summaryOf(error.problem.status === 401 ? form : mergeForm, error.problem);
    mergePlace.replaceChildren(summary, faultTable(error.problem) ?? '');
    summary.focus();
  } finally {
    button.disabled = false;
    mergePlace.removeAttribute('aria-busy');
  }
});

form.elements.token.value = keptToken();
drawBooks();
