// A seller's price list: judged row by row with its progress shown, then stored as a whole.

import { Refusal } from './api.js';
import { authorization, signature } from './editor.js';
import { clearFaults, faultSummary } from './faults.js';
import { address, count, danger, el, linked, partLink, ruled, section, sentence } from './format.js';
import { conditionText, money } from './offer-words.js';
import { atTop, mappingForm } from './price-list-columns.js';
import { listSent } from './price-list-sent.js';

const shownAtOnce = 100;

const verdicts = {
  'known-part': 'known part', 'known-elsewhere': 'known in another book', 'narrows-only': 'can mean several parts', 'look-alike-characters': 'reads like a known number', 'unknown': 'in no book', 'without-price': 'without a price', 'faulty': 'cannot be stored',
};
const counters = [['faulty', 'faulty'], ['withoutPrice', 'without-price'], ['lookAlikeCharacters', 'look-alike-characters'], ['unknown', 'unknown'], ['narrowsOnly', 'narrows-only'], ['knownElsewhere', 'known-elsewhere'], ['knownPart', 'known-part']];

const missing = (field, expected) => new Refusal({ type: '', title: 'Something is missing', errors: [{ field, found: '', expected, mend: 'choose it' }] });

/** Lines of JSON as they arrive; the last is the answer or the problem. */
async function* linesOf(answer) {
  let rest = '';
  for await (const piece of answer.body.pipeThrough(new TextDecoderStream())) {
    const lines = (rest + piece).split('\n');
    rest = lines.pop();
    yield* lines.filter(Boolean).map(line => JSON.parse(line));
  }
  if (rest) yield JSON.parse(rest);
}

async function send({ body, type }, query, progress) {
  const headers = { 'Accept': 'application/x-ndjson', 'Content-Type': type, ...authorization() };
  const answer = await fetch(`/api/offers/price-list?${query}`, { method: 'POST', headers, body });
  if (!answer.ok) throw new Refusal(await answer.json());
  let last = null;
  for await (const line of linesOf(answer)) {
    if (line.of === undefined) last = line;
    else progress(line);
  }
  if (!last) throw new Refusal({ type: '', title: 'The answer broke off', errors: [] });
  if (last.status) throw new Refusal(last);
  return last;
}

function waiting(place, status) {
  const bar = el('progress', { class: 'progress', 'aria-label': 'Rows judged', max: 1, value: 0 });
  const text = el('p', { class: 'waiting' }, 'Reading the list …');
  place.replaceChildren(text, bar);
  status.textContent = 'Reading the list.';
  return ({ rows, of }) => {
    bar.max = of;
    bar.value = rows;
    text.textContent = rows < of ? `${rows} of ${count(of, 'row')} judged …` : `${count(of, 'row')} judged; working on the offers …`;
  };
}

const standing = row => row.notStored ?? row.verdict;

function rowOf(row) {
  const instead = row.faults.find(fault => fault.expected.startsWith('an amount'))?.found;
  const detail = row.notStored === 'without-price' ? el('p', { class: 'small' }, instead && instead !== 'nothing' ? `“${instead}” stands where the price should.` : 'Nothing stands where the price should.') : row.notStored === 'faulty' ? row.faults.map(fault => el('p', null, `${fault.column}: “${fault.found}”, expected ${fault.expected}. To mend: ${fault.mend}.`)) : el('p', { class: 'small' }, linked(sentence(row.text), [...row.nearest, ...row.dangers].map(one => one.part)));
  return [
    String(row.line), row.part ? partLink(row.part, row.number) : el('span', { class: 'number' }, row.number || '–'),
    [el('strong', null, sentence(verdicts[standing(row)])), row.dangers.length ? [' ', danger(row.dangers[0].danger)] : null, detail, row.dangers.length ? el('p', { class: 'small quiet' }, linked(row.dangers[0].dangerText)) : null, row.alreadyStored ? el('p', { class: 'small' }, 'Stored already.') : null, row.earlier ? el('p', { class: 'small' }, `${sentence(row.earlier)}.`) : null],
    row.price ? money(row.price) : '–', row.pack === undefined ? 'not known' : String(row.pack), row.stock === undefined ? 'not known' : String(row.stock), sentence(conditionText(row)),
  ];
}

// What needs a person first.
const weight = row => 2 * counters.findIndex(([, verdict]) => verdict === standing(row)) + (row.dangers.length ? 0 : 1);

function rowsTable(rows) {
  const ordered = rows.toSorted((a, b) => weight(a) - weight(b) || a.line - b.line);
  const place = el('div');
  const show = many => place.replaceChildren(
    ruled('Rows, those that need a look first', [{ text: 'Line', class: 'count' }, 'Number', 'What it is', { text: 'Price', class: 'count' }, { text: 'For', class: 'count' }, { text: 'Stock', class: 'count' }, 'Condition'], ordered.slice(0, many).map(rowOf), { className: 'restack' }),
    many < ordered.length ? el('p', null, el('button', { type: 'button', class: 'plain', onclick: () => show(many + shownAtOnce) }, `Show ${Math.min(shownAtOnce, ordered.length - many)} more of ${ordered.length}`)) : '');
  show(shownAtOnce);
  return place;
}

const tally = counts => el('ul', { class: 'tally' }, counters.filter(([name]) => counts[name] > 0).map(([name, verdict]) => el('li', null, el('b', null, counts[name]), verdicts[verdict])));

function stored(place, status, answer) {
  const said = answer.result === 'already-stored' ? 'Every offer of the list was stored already' : `${count(answer.counts.new, 'offer')} stored`;
  const heading = el('h3', { tabindex: '-1' }, said);
  place.replaceChildren(el('section', { class: 'headline' }, heading,
    el('p', null, answer.counts.alreadyStored && answer.counts.new ? `${answer.counts.alreadyStored} were there already. ` : '', el('a', { href: address('offers.html', { seller: answer.asked.seller }) }, 'The offers of this seller'),
      answer.change ? [' · ', el('a', { href: address('history.html', { book: answer.asked.book }) }, 'take it back in the history')] : '')));
  status.textContent = `${said}.`;
  heading.focus();
}

/** Asks for the verdict of every row, and offers to store what can be stored. */
export async function judge(form, place, status, columns = {}) {
  clearFaults(form);
  const button = form.querySelector('.actions button');
  button.disabled = true;
  place.setAttribute('aria-busy', 'true');
  try {
    const sent = listSent(form.elements);
    if (!sent) throw missing('list', 'the file with the prices, or the table pasted');
    const fields = Object.fromEntries(['book', 'seller', 'currency', 'seen-on', 'decimal'].map(name => [name, form.elements[name].value.trim()]).filter(([, value]) => value !== ''));
    if (!fields.book) throw missing('book', 'the book that shall hold the offers');
    if (!fields.seller) throw missing('seller', 'the seller whose list it is');
    const query = { ...fields, ...columns };
    const answer = await send(sent, new URLSearchParams({ ...query, 'dry-run': 'true' }), waiting(place, status));
    show(answer, { form, place, status, sent, query });
  } catch (error) {
    refuse(error, { form, place, status, table: columns.table });
  } finally {
    button.disabled = false;
    place.removeAttribute('aria-busy');
  }
}

function refuse(error, { form, place, status, table }) {
  if (!(error instanceof Refusal)) throw error;
  const { columns } = error.problem;
  const again = chosen => judge(form, place, status, { ...(table ? { table } : {}), ...chosen });
  const summary = faultSummary(form, error.problem);
  place.replaceChildren(summary, columns ? section('Which column holds what', mappingForm({ columns }, again)) : '');
  summary.focus();
}

function show(answer, { form, place, status, sent, query }) {
  const { counts, tables } = answer;
  const priced = counts.rows - counts.withoutPrice;
  const heading = el('h3', { tabindex: '-1' }, counts.faulty ? `${count(counts.faulty, 'row')} of ${counts.rows} cannot be stored`
    : counts.withoutPrice ? `${count(priced, 'row')} of ${counts.rows} can be stored, ${counts.withoutPrice} without a price cannot` : `${count(counts.rows, 'row')} can be stored`);
  place.replaceChildren(
    heading, tally(counts),
    answer.decimalBecause ? el('p', { class: 'small quiet' }, answer.decimalMark ? `Prices were read with a decimal ${answer.decimalMark}: ${answer.decimalBecause}.` : `${sentence(answer.decimalBecause)}.`) : '',
    tables?.notes.length ? el('ul', { class: 'small quiet' }, tables.notes.map(note => el('li', null, `${sentence(note)}.`))) : '',
    counts.alreadyStored ? el('p', { class: 'small quiet' }, `${counts.alreadyStored} are stored already, or stand twice in the list.`) : '',
    counts.faulty || !counts.new ? '' : storing(answer, { form, place, status, sent, query }),
    section('Which column holds what', mappingForm({ columns: answer.columns, mapped: answer.mapping.columns, tables }, chosen => judge(form, place, status, chosen))),
    section('The rows', rowsTable(answer.rows)));
  status.textContent = `${heading.textContent}.`;
  heading.focus();
}

function leavingOut({ counts, rows }) {
  if (!counts.withoutPrice) return null;
  const lines = rows.filter(row => row.notStored === 'without-price').slice(0, 5).map(row => row.line);
  return el('p', { class: 'cell' }, el('label', { class: 'choice' }, el('input', { type: 'checkbox', id: 'list-leave-out', name: 'leave-out', value: 'without-price' }),
    ` Leave out ${count(counts.withoutPrice, 'row')} without a price (line ${lines.join(', ')}${counts.withoutPrice > lines.length ? ' and more' : ''})`));
}

function storing(answer, { form, place, status, sent, query }) {
  const signed = signature({ why: 'Why you take it in' });
  const choice = leavingOut(answer);
  const storingForm = el('form', {
    class: 'question asking', novalidate: true, onsubmit: async event => {
      event.preventDefault();
      clearFaults(storingForm);
      storingForm.querySelector('.faults')?.remove();
      const leaves = choice?.querySelector('input').checked;
      if (choice && !leaves) {
        atTop(new Refusal({ type: '', title: 'Some rows have no price', errors: [{ field: 'leave-out', found: 'nothing', expected: 'every row to have a price, or your word that those without are left out', mend: 'tick the box, or add the prices to the list' }] }), storingForm);
        return;
      }
      const note = Object.fromEntries(Object.entries(signed.read()).filter(([, text]) => text));
      try {
        stored(place, status, await send(sent, new URLSearchParams({ ...query, ...note, ...(leaves ? { 'leave-out': 'without-price' } : {}), 'seen-on': answer.asked.seenOn }), waiting(place, status)));
      } catch (error) {
        refuse(error, { form, place, status });
      }
    },
  }, choice, el('div', { class: 'cells' }, signed.cells), el('div', { class: 'actions' }, el('button', null, `Store ${count(answer.counts.new, 'offer')}`)));
  return storingForm;
}
