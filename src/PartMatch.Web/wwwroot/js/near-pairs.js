// Near numbers of one book that nobody has judged: told as they are counted, the likeliest mix-ups at the end.

import { Refusal, ask } from './api.js';
import { readLines } from './build-stream.js';
import { faultSummary } from './faults.js';
import { address, count, el, grouped, ruled, slips } from './format.js';
import { drawStrip } from './page.js';

const form = document.querySelector('form[data-question]');
const place = document.getElementById('answer');
const status = document.getElementById('status');
const query = new URLSearchParams(location.search);

drawStrip();

function waiting(stop) {
  const far = el('span', null, 'Comparing every number of the book …');
  const button = el('button', { type: 'button' }, 'Stop');
  button.addEventListener('click', stop);
  place.replaceChildren(el('div', { class: 'waiting' }, far, ' ', button));
  return ({ looked, numbers, pairs }) => {
    far.textContent = `${Math.floor(100 * looked / numbers)} % of ${count(numbers, 'number')} looked at, ${count(pairs, 'pair')} found so far.`;
  };
}

const part = (id, number) => [el('span', { class: 'number' }, number), el('div', { class: 'quiet' }, el('a', { href: address('part.html', { number: id }) }, id))];

function tell(answer) {
  const heading = el('h2', { tabindex: '-1' }, answer.total === 0 ? 'No near pair is left to judge' : `${count(answer.total, 'near pair')} that nobody has judged`);
  place.replaceChildren(heading);
  if (answer.total > 0) {
    place.append(ruled('The likeliest mix-ups', ['One number', 'The other', 'How near', 'What next'], answer.pairs.map(pair => [
      part(pair.partA, pair.numberA), part(pair.partB, pair.numberB), slips(pair),
      el('a', { href: address('look-alikes.html', { number: pair.partA }) }, 'what tells them apart'),
    ]), { className: 'restack' }));
    if (answer.total > answer.pairs.length) place.append(el('p', { class: 'quiet' }, `The first ${answer.pairs.length} of ${grouped(answer.total)}.`));
  }
  status.textContent = heading.textContent;
  heading.focus();
}

async function look() {
  const stopping = new AbortController();
  const told = waiting(() => stopping.abort());
  const limit = query.get('limit') ?? '20';
  try {
    tell(await readLines(`/api/books/${encodeURIComponent(query.get('book'))}/near-pairs?limit=${encodeURIComponent(limit)}`, { signal: stopping.signal, told }));
  } catch (error) {
    if (error.name === 'AbortError') {
      place.replaceChildren(el('p', { class: 'notice' }, 'Stopped. Nothing is kept of it.'));
      status.textContent = 'Stopped.';
      return;
    }
    if (!(error instanceof Refusal)) throw error;
    place.replaceChildren(faultSummary(form, error.problem));
  }
}

async function offerBooks() {
  const { books } = await ask('/api/books');
  form.elements.book.replaceChildren(...books.map(book => el('option', { value: book.book }, book.title)));
  if (query.get('book')) form.elements.book.value = query.get('book');
  if (query.get('limit')) form.elements.limit.value = query.get('limit');
}

try {
  await offerBooks();
  if (query.get('book')) await look();
  else place.replaceChildren(el('p', { class: 'quiet' }, 'Choose a book.'));
} catch (error) {
  if (!(error instanceof Refusal)) throw error;
  place.replaceChildren(faultSummary(null, error.problem));
}
