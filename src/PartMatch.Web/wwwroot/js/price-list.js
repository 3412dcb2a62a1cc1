// A seller's price list: judged row by row with its progress shown, then stored as a whole.

import { Refusal } from './api.js';
import { authorization, signature } from './editor.js';
import { clearFaults, faultSummary } from './faults.js';
import { address, count, danger, el, linked, partLink, ruled, section, sentence } from './format.js';
import { conditionText, money } from './offer-words.js';
import { listSent } from './price-list-sent.js';

const shownAtOnce = 100;

const roles = [['number', 'Number'], ['price', 'Price'], ['quantity', 'Pieces in stock'], ['pack', 'Pieces for the price'], ['condition', 'Condition'], ['core-deposit', 'Deposit for the old part'], ['note', 'Note']];

const verdicts = {
  'known-part': 'known part', 'known-elsewhere': 'known in another book', 'several-parts': 'can mean several parts', 'look-alike': 'reads like a known number', 'unknown': 'in no book', 'faulty': 'cannot be stored',
};
const counters = [['faulty', 'faulty'], ['lookAlike', 'look-alike'], ['unknown', 'unknown'], ['severalParts', 'several-parts'], ['knownElsewhere', 'known-elsewhere'], ['knownPart', 'known-part']];

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

const columnsOf = form => Object.fromEntries([...roles, ['table']].map(([role]) => [role, form?.querySelector(`[name="${role}"]`)?.value ?? '']).filter(([, value]) => value !== ''));

/** Which table of a page is read. Another one has other columns, so choosing it forgets those. */
function tableField(tables, other) {
  if (!tables) return null;
  const shown = ({ table, caption, heads, rows }) => `${table}: ${caption ?? heads.join(', ')} (${count(rows, 'row')})`;
  return el('div', { class: 'cell' }, el('label', { for: 'list-table' }, 'Table of the page'),
    el('select', { id: 'list-table', name: 'table', 'aria-describedby': 'list-table-hint', onchange: event => other(event.target.value) },
      tables.offered.map(one => el('option', { value: one.table, selected: one.table === tables.taken }, shown(one)))),
    el('p', { class: 'hint', id: 'list-table-hint' }, `${sentence(tables.because)}.`));
}

function mappingFields({ columns, unused }) {
  const heads = [...columns.map(one => [one.column, one.head]), ...unused.map(head => [head, head])];
  return el('div', { class: 'cells' }, roles.map(([role, name]) => {
    const taken = columns.find(one => one.holds === role);
    const id = `column-${role}`;
    const isNeeded = role === 'number' || role === 'price';
    return el('div', { class: 'cell' }, el('label', { for: id }, name),
      el('select', { id, name: role, 'aria-describedby': `${id}-hint` }, isNeeded ? null : el('option', { value: 'none', selected: !taken }, 'no column'),
        heads.map(([value, head]) => el('option', { value, selected: taken?.column === value }, head))),
      el('p', { class: 'hint', id: `${id}-hint` }, taken ? `${sentence(taken.because)}.` : role === 'pack' ? 'Each price is then for one piece.' : 'Not recorded then.'));
  }));
}

function rowOf(row) {
  const detail = row.verdict === 'faulty' ? row.faults.map(fault => el('p', null, `${fault.column}: “${fault.found}”, expected ${fault.expected}. To mend: ${fault.mend}.`)) : el('p', { class: 'small' }, linked(sentence(row.text), [...row.nearest, ...row.dangers].map(one => one.part)));
  return [
    String(row.line), row.part ? partLink(row.part, row.number) : el('span', { class: 'number' }, row.number || '–'),
    [el('strong', null, sentence(verdicts[row.verdict])), row.dangers.length ? [' ', danger(row.dangers[0].danger)] : null, detail, row.alreadyStored ? el('p', { class: 'small' }, 'Stored already.') : null, row.earlier ? el('p', { class: 'small' }, `${sentence(row.earlier)}.`) : null],
    row.price ? money(row.price) : '–', row.pack === undefined ? 'not known' : String(row.pack), row.stock === undefined ? 'not known' : String(row.stock), sentence(conditionText(row)),
  ];
}

// What needs a person first.
const weight = row => 2 * counters.findIndex(([, verdict]) => verdict === row.verdict) + (row.dangers.length ? 0 : 1);

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
    refuse(error, form, place);
  } finally {
    button.disabled = false;
    place.removeAttribute('aria-busy');
  }
}

function refuse(error, form, place) {
  if (!(error instanceof Refusal)) throw error;
  const summary = faultSummary(form, error.problem);
  place.replaceChildren(summary);
  summary.focus();
}

function show(answer, { form, place, status, sent, query }) {
  const { counts, tables } = answer;
  const heading = el('h3', { tabindex: '-1' }, counts.faulty ? `${count(counts.faulty, 'row')} of ${counts.rows} cannot be stored` : `${count(counts.rows, 'row')} can be stored`);
  const mapping = el('form', { class: 'question asking', novalidate: true, onsubmit: event => { event.preventDefault(); judge(form, place, status, columnsOf(mapping)); } },
    tableField(tables, table => judge(form, place, status, { table })), mappingFields(answer.mapping), el('div', { class: 'actions' }, el('button', null, 'Judge again with these columns')));
  place.replaceChildren(
    heading, tally(counts),
    answer.decimalBecause ? el('p', { class: 'small quiet' }, answer.decimalMark ? `Prices were read with a decimal ${answer.decimalMark}: ${answer.decimalBecause}.` : `${sentence(answer.decimalBecause)}.`) : '',
    tables?.notes.length ? el('ul', { class: 'small quiet' }, tables.notes.map(note => el('li', null, `${sentence(note)}.`))) : '',
    counts.alreadyStored ? el('p', { class: 'small quiet' }, `${counts.alreadyStored} are stored already, or stand twice in the list.`) : '',
    counts.faulty || !counts.new ? '' : storing(answer, { form, place, status, sent, query }),
    section('Which column holds what', mapping),
    section('The rows', rowsTable(answer.rows)));
  status.textContent = `${heading.textContent}.`;
  heading.focus();
}

function storing(answer, { form, place, status, sent, query }) {
  const signed = signature({ why: 'Why you take it in' });
  return el('form', {
    class: 'question asking', novalidate: true, onsubmit: async event => {
      event.preventDefault();
      const note = Object.fromEntries(Object.entries(signed.read()).filter(([, text]) => text));
      try {
        stored(place, status, await send(sent, new URLSearchParams({ ...query, ...note, 'seen-on': answer.asked.seenOn }), waiting(place, status)));
      } catch (error) {
        refuse(error, form, place);
      }
    },
  }, el('div', { class: 'cells' }, signed.cells), el('div', { class: 'actions' }, el('button', null, `Store ${count(answer.counts.new, 'offer')}`)));
}
