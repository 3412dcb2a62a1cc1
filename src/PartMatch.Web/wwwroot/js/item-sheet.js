// One item: against its service limits, what was read beside what is recorded of its number, graded parts, photographs, works; and the ways to add to it.

import { rowsWith } from './book-rows.js';
import { familyOf, offerVariants } from './choices.js';
import { address, el, facts, linked, partLink, plain, ruled, say, section, sentence, sourced, ways } from './format.js';
import { addresses } from './page.js';
import { codeWords } from './record-words.js';

const record = (book, table, question) => address('record.html', { book, table, ...question });

const shown = value => value?.text ?? '–';

function limits({ asked, check }, condition) {
  return section('Service limits', check.limits.length === 0 ? el('p', null, check.text)
    : ruled('Every limit that holds for it, and what was read', ['Feature', 'Limit', 'Read', 'Verdict', 'Beyond it, at worst', 'Who sets it'], check.limits.map(one => ({
      'data-met': { 'within-limits': 'yes', 'beyond-limits': 'no', 'not-inspected': 'not-known' }[one.condition],
      cells: [[sentence(one.name), el('p', { class: 'reason-text' }, one.text)],
        [shown(one.limit), el('div', { class: 'quiet' }, one.part ? 'of this number' : 'of the kind')], shown(one.reading), condition(one.condition),
        say('consequence', one.consequence), sourced(asked.family, one.source)],
    })), { className: 'restack' }));
}

const howRead = (book, one) => [[one.instrument, one.readOn].filter(Boolean).join(', ') || 'not recorded how', one.note ? `; ${one.note}` : '',
  el('div', { class: 'quiet' }, one.counts ? '' : 'withdrawn: ', one.source ? sourced(book, one.source) : 'no source recorded')];

/** What was read, each with the ways to change it and to let it count for the number. */
function readings(answer, { promoted, change, promote }) {
  const { asked, check } = answer;
  const acts = one => el('p', { class: 'buttons' },
    el('button', { type: 'button', class: 'plain', onclick: () => change(one.feature) }, 'Change', el('span', { class: 'unseen' }, ` ${one.name}`)),
    promoted.has(`promoted-${asked.item}-${one.feature}`) ? el('span', null, 'counts for the number')
      : one.counts ? el('button', { type: 'button', class: 'plain', onclick: () => promote(one) }, 'Let it count for the number',
        el('span', { class: 'unseen' }, ` – ${one.name}`)) : '');
  return check.readings.length === 0 ? el('p', null, 'Nothing was read on it yet.')
    : ruled('What was read, beside what is recorded of the number', ['Feature', 'Read on this item', 'Recorded of its number', 'How', { text: 'Do', class: 'acts' }],
      check.readings.map(one => [
        sentence(one.name), plain(shown(one.reading)), one.ofNumber ? plain(one.ofNumber.text) : 'nothing', howRead(asked.family, one), acts(one),
      ]), { className: 'restack' });
}

const grades = ({ check }) => section('Graded part to order', check.grades.length === 0 ? null : el('ul', null, check.grades.map(one =>
  el('li', null, linked(one.text), ' ', one.outcome === 'one' ? '' : el('strong', null, 'Do not order by it yet.')))));

function photograph({ family, item }, { photo, caption, link }) {
  const picture = el('img', { src: link, alt: caption ?? `photograph ${photo} of ${item}`, loading: 'lazy' });
  return el('li', null, el('figure', null, el('a', { href: link }, picture),
    el('figcaption', null, caption ?? 'No caption', ' ', el('a', { class: 'number', href: record(family, 'photos', { key: photo }) }, photo))));
}

const photographs = ({ asked, photos }) =>
  (photos.length === 0 ? el('p', null, 'No photograph.') : el('ul', { class: 'photos' }, photos.map(one => photograph(asked, one))));

const works = ({ asked, worksDone }) => section('Work done', worksDone.length === 0 ? el('p', null, 'None is recorded.') : el('ul', null, worksDone.map(one =>
  el('li', null, sentence(plain(one.work)), one.doneOn ? `, ${one.doneOn}` : '', one.note ? `: ${one.note}` : ''))),
ways(['Record work done', `${record(asked.family, 'works-done', { item: asked.item })}&new`]));

/** Leads to the fit page with this item in place of its number. */
async function fitQuestion({ asked, kind }) {
  const family = await familyOf(asked.family);
  const positions = family.positions.filter(position => position.kind === kind);
  if (positions.length === 0) return null;
  const variant = el('select', { name: 'variant', id: 'fit-variant', required: true });
  offerVariants(variant, family, '');
  const position = el('select', { name: 'position', id: 'fit-position' }, positions.map(one => el('option', { value: one.position }, one.name)));
  const cell = (control, label) => el('div', { class: 'cell' }, el('label', { for: control.id }, label), control);
  return el('div', { class: 'asking' }, section('Will it fit?', el('p', { class: 'quiet' }, 'Asked with what was read on this item, in place of what is recorded of its number.'),
    el('form', { class: 'question', action: 'fit.html', method: 'get' },
      el('input', { type: 'hidden', name: 'family', value: asked.family }), el('input', { type: 'hidden', name: 'item', value: asked.item }),
      el('div', { class: 'cells' }, cell(variant, 'On which variant'), cell(position, 'Where')),
      el('div', { class: 'actions' }, el('button', null, 'Will it fit?')))));
}

/** `{title, summary, said, content}` of an item. `opening(text, open)` makes a button that opens a form, `done(text)` draws anew. */
export async function itemSheet(answer, { condition, opening, status, done }) {
  const { asked, check } = answer;
  const promotions = await rowsWith(asked.family, 'evidence', {}, { q: `promoted-${asked.item}-` });
  const place = el('div', { class: 'opening' }); // of the form about one reading
  async function openFor(load) {
    const { node, focus } = await load(() => place.replaceChildren());
    place.replaceChildren(node);
    node.scrollIntoView({ block: 'nearest' });
    focus();
  }

  const saved = text => ({ change }) =>
    done(change === undefined ? 'Nothing was different from what is there, so nothing was stored.' : `${text}, as change ${change}.`);
  const ask = (cancel, text) => ({ answer, status, cancel, saved: saved(text) });
  const change = feature => openFor(async cancel => (await import('./item-readings.js')).changeReading(feature, ask(cancel, 'The reading is changed')));
  const promote = reading => openFor(async cancel => (await import('./item-promote.js')).promotion(reading, ask(cancel, 'It counts for the number')));
  const add = opening('Add readings', async cancel => (await import('./item-readings.js')).addReadings(ask(cancel, 'Added')));
  const photo = opening('Add a photograph', async cancel => (await import('./item-photo.js')).addPhoto(ask(cancel, 'The photograph is stored')));
  return {
    title: `${asked.item} ${answer.name}`, summary: `${asked.item}, ${answer.name}.`, said: `${asked.item}: ${condition(check.condition).textContent}.`,
    content: [
      el('section', { class: 'headline' }, el('h2', { 'data-first': true, tabindex: '-1' }, el('span', { class: 'number' }, asked.item), ` ${answer.name}`),
        el('p', { class: 'why' }, condition(check.condition), ' ', check.text),
        facts([['Taken to be', partLink(answer.part)], ['Where it came from', answer.origin ? codeWords('origin', answer.origin) : 'not recorded'],
          ['As found', answer.asFound], ['Note', answer.note]]),
        ways(['Edit the item', record(asked.family, 'items', { key: asked.item })],
          ['History', address('history.html', { book: asked.family, table: 'items', key: asked.item })], ['All items', address('items.html', { family: asked.family })])),
      limits(answer, condition),
      section('Readings', readings(answer, { promoted: new Set(promotions.map(one => one.row.evidence)), change, promote }), place, add),
      grades(answer),
      await fitQuestion(answer),
      section('Photographs', photographs(answer), photo),
      works(answer),
      section('Cautions', check.cautions.length ? el('ul', { class: 'cautions' }, check.cautions.map(one => el('li', null, one.text))) : null),
      section('What no reading shows', el('p', null, check.notInspected)),
      addresses(answer),
    ],
  };
}
