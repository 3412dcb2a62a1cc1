// What to measure next, and the faults of one sort: each in full where they are few; where they are many
// what they share is said once, and the first of them stand in a table.

import { positionName, variantName } from './choices.js';
import { address, count, el, linked, pageOf, partLink, ruled, say, section, sentence } from './format.js';
import { tableName } from './record-words.js';

const atOnce = 10;

/** A row of a book leads to its record; where the book is not known, it is only said. */
function rowLink({ book, table, key, text }) {
  return book ? el('a', { href: address('record.html', { book, table, key }) }, text) : text;
}

function rowsOf(fault, className = '') {
  return el('ul', { class: className }, fault.rows.map(row => el('li', null, el('span', { class: 'quiet' }, `${tableName(row.table)}: `), rowLink(row),
    row.source ? el('span', { class: 'quiet' }, ` (${row.source})`) : null)));
}

/** Two parts that can be mixed up lead to the key that tells them apart. */
function tellApart(fault) {
  const parts = fault.sort === 'near-unjudged' ? fault.rows.map(row => decodeURIComponent(row.key)) : [];
  return parts.length === 2 ? el('a', { href: address('tell-apart.html', { parts: parts.join(',') }) }, 'Tell them apart', el('span', { class: 'unseen' }, `: ${fault.title}`)) : null;
}

/** Where a value or a whole position is missing, the bench sheet of a variant that lacks it. */
function benchLink(fault, { asked }) {
  const [first] = fault.variants;
  if (!['missing-value', 'not-recorded'].includes(fault.sort) || !fault.position || !first) return null;
  const variant = fault.variants.includes(asked.variant) ? asked.variant : first;
  return el('a', { href: address('bench.html', { family: asked.family, variant, position: fault.position }) }, 'Enter it on the bench sheet',
    el('span', { class: 'unseen' }, `: ${fault.title}`));
}

/** One question that the fault shows in, as the fit page answers it. */
function fitLink(fault, text) {
  return fault.fit ? el('a', { href: pageOf(fault.fit) }, text, el('span', { class: 'unseen' }, `: ${fault.title}`)) : null;
}

/** How many questions hang on it, in short. */
const settles = ({ alone, together }) => [alone ? `${alone} alone` : '', together ? `${together} with others` : ''].filter(Boolean).join(', ');

function about(fault, place) {
  const on = fault.variants.map(code => variantName(place, code)).join(', ') || 'fitted on no variant';
  const where = [fault.position ? positionName(place, fault.position) : '', on].filter(Boolean).join('; ');
  return el('p', { class: 'small quiet plain-name' }, sentence(where), fault.consequence ? `; as bad as ${say('consequence', fault.consequence)}` : '');
}

const waysFrom = (fault, answer, text) => el('ul', { class: 'bare inline ways' },
  [fitLink(fault, text), tellApart(fault), benchLink(fault, answer)].filter(Boolean).map(link => el('li', null, link)));

const rows = (fault, isOpen) => el('details', { class: 'more', open: isOpen },
  el('summary', null, `${count(fault.rows.length, 'row')} of the books`), rowsOf(fault));

function faultSection(fault, place, answer) {
  return el('article', { class: 'candidate' }, el('h3', null, fault.title),
    about(fault, place),
    el('p', null, linked(fault.text)),
    el('p', null, el('strong', null, 'To mend it: '), linked(fault.mend)),
    rows(fault, fault.rows.length <= 3),
    waysFrom(fault, answer, 'See a question in which it shows'));
}

// A sentence ends before a large letter or a digit; "2.4 mm" and "ev-0012: measured" do not end one.
const sentencesOf = text => text.split(/(?<=[.!?]) (?=[\p{Lu}\d])/u);
const isOfQuestions = text => /^(No question|\d+ questions?) between the variants/.test(text); // told by `unlocks` in a column of its own

/** The sentences with which all the texts begin, and what is left of each. */
function shared(texts) {
  const all = texts.map(sentencesOf);
  let many = 0;
  while (many < all[0].length && all.every(one => one[many] === all[0][many])) many += 1;
  return { once: all[0].slice(0, many).join(' '), rest: all.map(one => one.slice(many).join(' ')) };
}

/** Where every title ends alike behind a colon, that is said once. */
function titles(faults) {
  const [, tail] = /(: [^:]+)$/.exec(faults[0].title) ?? [];
  const isShared = tail && faults.every(fault => fault.title.endsWith(tail));
  return { once: isShared ? `${sentence(tail.slice(2))}.` : '', rest: faults.map(fault => (isShared ? fault.title.slice(0, -tail.length) : fault.title)) };
}

/** Opened for the paper as well: what is folded is not printed. */
function folded(text, content) {
  const place = el('details', { class: 'more' }, el('summary', null, text), content);
  let wasOpen = false;
  const unfold = () => { wasOpen = place.open; place.open = true; };
  const foldAgain = () => { place.open = wasOpen; };
  const paper = matchMedia('print');
  paper.addEventListener('change', () => {
    if (place.isConnected) (paper.matches ? unfold : foldAgain)();
  });
  return place;
}

/** Does the title say where already, and is no other variant concerned than the one asked about? */
const isPlain = (fault, place, { asked }) => fault.position && fault.title.startsWith(`${positionName(place, fault.position)} on `)
  && fault.variants.length === 1 && fault.variants[0] === asked.variant && !fault.consequence;

function manyFaults(faults, place, answer) {
  const named = titles(faults);
  const says = shared(faults.map(fault => sentencesOf(fault.text).filter(one => !fault.unlocks || !isOfQuestions(one)).join(' ')));
  const mends = shared(faults.map(fault => fault.mend));
  const columns = [
    ['What', index => [named.rest[index], isPlain(faults[index], place, answer) ? null : about(faults[index], place)], true],
    ['Settles', index => (faults[index].unlocks && settles(faults[index].unlocks)) || '–', faults.some(fault => fault.unlocks)],
    ['What it is', index => linked(says.rest[index]), says.rest.some(Boolean)],
    ['To mend it', index => linked(mends.rest[index]), mends.rest.some(Boolean)],
    ['Where it stands', index => [faults[index].rows.length === 1 ? rowsOf(faults[index], 'bare') : rows(faults[index], false),
      waysFrom(faults[index], answer, 'See a question')], true],
  ].filter(([, , isTold]) => isTold);
  const indexes = faults.map((_, index) => index);
  const table = (caption, some) => ruled(caption, columns.map(([head]) => head),
    some.map(index => columns.map(([, cell]) => cell(index))), { className: 'restack many' });
  return [
    el('p', null, [named.once, says.once].filter(Boolean).join(' ')),
    mends.once ? el('p', null, el('strong', null, 'To mend it: '), linked(mends.once)) : null,
    table(`The first ${atOnce} of ${faults.length}`, indexes.slice(0, atOnce)),
    folded(`The other ${faults.length - atOnce}, in the same order`, table(`The other ${faults.length - atOnce}`, indexes.slice(atOnce))),
  ];
}

/** The faults of one sort, in the order of the answer. */
export function faultList(faults, place, answer) {
  return faults.length > atOnce ? manyFaults(faults, place, answer) : faults.map(fault => faultSection(fault, place, answer));
}

/** Of one variant: the missing values that settle most. */
export function measureNext({ measureNext: next, asked }, place) {
  if (!asked.variant || asked.sort || next.length === 0) return null;
  return section('What to measure next',
    el('p', { class: 'quiet' }, 'Counted are the questions “does what one variant has here go on another?” that are not known yet. “Alone”: nothing but this value holds an answer open. A measured value can still turn out too close to call.'),
    ruled('Missing values, those first that settle most alone', ['Measure', 'With', 'Settles', 'A question that hangs on it'], next.map(({ measure, ...fault }) => [
      [sentence(measure.name), ' of ', partLink(measure.part), el('p', { class: 'small quiet plain-name' }, positionName(place, fault.position))],
      measure.check ? [`${say('method', measure.check)}, ${measure.minutes} min`, measure.how ? el('p', { class: 'quiet' }, sentence(measure.how)) : null] : 'no check is recorded',
      settles(fault.unlocks),
      fitLink(fault, 'See it') ?? '',
    ]), { className: 'restack slim' }));
}
