// One position of a variant: the same part as on another variant, nothing, or another part with what was measured on it. Each is one change.

import { benchPart } from './bench-part.js';
import { benchSource, keepSource } from './bench-source.js';
import { rowsWith } from './book-rows.js';
import { changeForm } from './change-form.js';
import { address, el, partLink, rowSpanText, ways } from './format.js';
import { findNamed } from './record-references.js';

/**
 * What the other variants have there: each part once, with who has it, on which of their engines, and how many. Their spans are shown and not taken over:
 * one engine on the bench does not tell where its variant changed, and another's serial numbers are another's.
 */
function known(rows, variant) {
  const parts = new Map();
  for (const { row } of rows.filter(one => one.row.variant !== variant)) {
    const one = parts.get(row.part) ?? { part: row.part, quantity: row.quantity, variants: new Set(), hasSpan: false };
    const span = rowSpanText(row);
    one.variants.add(span ? `${row.variant} (${span})` : row.variant);
    one.hasSpan ||= span !== '';
    parts.set(row.part, one);
  }

  return [...parts.values()].toSorted((a, b) => b.variants.size - a.variants.size || a.part.localeCompare(b.part, 'en'));
}

const onVariants = ({ variants }) => (variants.size ? `, as on ${[...variants].toSorted().join(', ')}` : '');

function sameParts(others, take) {
  const part = one => (one.part === 'none' ? 'Nothing there' : [partLink(one.part, one.part), one.name ? ` ${one.name}` : '', one.quantity > 1 ? ` ×${one.quantity}` : '']);
  const button = one => el('button', { type: 'button', class: 'plain', onclick: () => take(one) },
    one.part === 'none' ? 'Nothing there' : 'The same part', el('span', { class: 'unseen' }, ` (${one.part})${onVariants(one)}`));
  return [
    el('ul', { class: 'same' }, others.map(one => el('li', null, button(one), el('span', null, part(one), onVariants(one))))),
    others.some(one => one.hasSpan) ? el('p', { class: 'hint' }, 'Where another variant changed over is not taken along: one engine does not show it. ',
      'What is recorded here stands for every engine of this variant until somebody adds a from and to.') : null,
  ];
}

function recorded(answer, place, states) {
  const { family, variant } = answer.asked;
  return [
    el('p', null, el('strong', null, states[place.state]), place.parts.length ? ': ' : '.',
      place.parts.map((part, index) => [index ? ', ' : '', partLink(part.part, part.number), ` ${part.name}`])),
    ways(['Correct what is recorded', address('record.html', { book: family, table: 'fitments', where: [`variant:${variant}`, `position:${place.position}`] })],
      ['Edit the part’s values', address('record.html', { book: family, table: 'values', where: place.parts.map(part => `part:${part.part}`).slice(0, 1) })]),
  ];
}

/** The place of one position on the sheet. `saved(answer)` once something is stored. */
export async function positionForm(answer, place, { status, states, saved }) {
  const { family: book, variant } = answer.asked;
  const heading = el('h2', { 'data-first': true, tabindex: '-1' }, place.name);
  if (place.state === 'none') return el('section', null, heading, recorded(answer, place, states));
  const isFitted = place.state === 'fitted';
  const [source, rows] = await Promise.all([benchSource(book, variant), rowsWith(book, 'fitments', { position: place.position })]);
  const others = await Promise.all(known(rows, variant).map(async one => ({ ...one, name: one.part === 'none' ? '' : (await findNamed(book, 'part', one.part))?.name })));
  const part = await benchPart(book, place, { fitted: place.parts, quantity: others.find(one => one.part !== 'none')?.quantity ?? '' });
  let wanted = null; // what one click took: the part that others have, or nothing
  let evidence = null;

  const quick = one => {
    wanted = one;
    form.form.requestSubmit();
  };
  const nothing = others.some(one => one.part === 'none') ? others : [...others, { part: 'none', quantity: '0', variants: new Set() }];
  const form = changeForm({
    book, name: 'position', label: place.name, button: isFitted ? 'Add what was measured' : 'Record this part', status,
    saved(done) {
      keepSource(book, variant, evidence);
      return saved(done);
    },
    cells: [
      ...source.cells,
      isFitted ? null : el('div', { class: 'cell wide' }, el('h3', null, 'In one click'), sameParts(nothing, quick)),
      el('h3', { class: 'cell wide' }, isFitted ? 'What was measured on it' : 'Or another part'), part.cells,
    ],
    restore: part.restore,
    async gather(set, note) {
      const taken = wanted;
      wanted = null;
      const { code, control } = await source.add(set, note);
      evidence = code;
      const row = { variant, position: place.position, evidence: code };
      if (taken) set.add('fitments', { ...row, part: taken.part, quantity: taken.part === 'none' ? '0' : taken.quantity }, { evidence: control });
      else await part.put(set, row, control);
    },
  });
  return el('section', null, heading, isFitted ? recorded(answer, place, states) : el('p', null, states[place.state]), form.node);
}
