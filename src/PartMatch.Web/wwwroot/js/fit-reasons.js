// The reasons of a fit answer as a ruled table, with a scale drawn wherever two quantities were compared.

import { el, linked, met, partLink, plain, ruled, say, sentence, sentences, svg } from './format.js';
import { sourceStep } from './fit-findings.js';

/** The band that was allowed and where the part lies, to scale; nothing where the ends are not known. */
function scale(reason) {
  const { part, need, band, difference, allowance, relation } = reason;
  const value = difference && band ? difference : part;
  const limits = difference && band ? band : need && { low: need.low, high: need.high };
  if (value?.low === undefined || value.high === undefined || !limits || (limits.low === undefined && limits.high === undefined)) return null;
  const slack = band ? 0 : allowance?.high ?? 0;
  const low = relation === 'at-most' || limits.low === undefined ? null : limits.low - slack;
  const high = relation === 'at-least' || limits.high === undefined ? null : limits.high + slack;
  const ends = [low, high, value.low, value.high].filter(end => end !== null);
  const room = (Math.max(...ends) - Math.min(...ends)) || Math.abs(ends[0]) || 1;
  const from = Math.min(...ends) - room * 0.15;
  const to = Math.max(...ends) + room * 0.15;
  const x = end => (100 * (end - from)) / (to - from);
  const left = low === null ? 0 : x(low);
  const right = high === null ? 100 : x(high);
  const width = Math.max(2.5, x(value.high) - x(value.low));
  return svg('svg', { viewBox: '0 0 100 18', class: 'scale', 'aria-hidden': 'true', focusable: 'false' },
    svg('rect', { x: left, y: 3, width: Math.max(0.5, right - left), height: 12, class: 'band' }),
    low === null ? null : svg('path', { d: `M${left + 3} 3 H${left} V15 H${left + 3}`, class: 'outline' }),
    high === null ? null : svg('path', { d: `M${right - 3} 3 H${right} V15 H${right - 3}`, class: 'outline' }),
    svg('rect', { x: x(value.low) - (width - (x(value.high) - x(value.low))) / 2, y: 6, width, height: 6, class: 'solid' }));
}

const relations = { 'same': 'the same', 'at-least': 'at least', 'at-most': 'at most', 'one-of': 'one of', 'covers': 'must cover', 'band': 'difference within' };

/** How far beyond the demand the rule still lets a part be. */
function slack({ relation, allowance }) {
  if (!allowance) return '';
  return { 'same': `within ${allowance.text}`, 'at-least': `that, or up to ${allowance.text} less`, 'at-most': `that, or up to ${allowance.text} more` }[relation] ?? '';
}

function allowed(reason) {
  const words = reason.relation ? relations[reason.relation] : '';
  const around = reason.band?.text ?? slack(reason);
  const found = reason.difference ? el('div', { class: 'quiet' }, `here: ${reason.difference.text}`) : null;
  return [words, around ? ` ${around}` : '', scale(reason), found];
}

/** A sum takes the room of both sides: one term a line. */
function sum(terms) {
  return { colspan: 2, cell: el('ul', { class: 'bare' }, terms.map(term => el('li', null, term.text, term.part ? [' ', partLink(term.part)] : ''))) };
}

function value(compared) {
  if (!compared) return '–';
  return [compared.text, compared.part ? el('div', { class: 'small' }, partLink(compared.part)) : '', compared.from === 'need' ? el('div', { class: 'quiet small' }, 'demanded outright') : ''];
}

/** Every part that a reason names. */
export const partsOf = reason => [reason.part, reason.need, ...(reason.terms ?? [])].map(compared => compared?.part);

function compared(reason) {
  const known = partsOf(reason);
  const means = [reason.effect ? say('effect', reason.effect) : '', reason.consequence ? `at worst ${say('consequence', reason.consequence)}` : ''].filter(Boolean).join('; ');
  return [
    el('span', { class: 'reason-name' }, /^[rs\d]+$/.test(reason.id) ? [el('span', { class: 'reason-id' }, reason.id), ' '] : '', sentence(plain(reason.feature ?? reason.code ?? reason.by)), el('span', { class: 'quiet' }, ` (${say('by', reason.by)})`)),
    el('p', { class: 'reason-text' }, linked(sentences(reason.text), known)),
    reason.mend ? el('p', { class: 'reason-text' }, linked(sentences(reason.mend), known)) : null,
    means && reason.met !== 'yes' ? el('p', { class: 'reason-text quiet' }, `${reason.met === 'no' ? 'This' : 'If not met, this'} ${means}.`) : null,
  ];
}

const order = ['no', 'not-known', 'yes'];

function table(caption, reasons) {
  if (reasons.length === 0) return null;
  const sorted = reasons.toSorted((a, b) => order.indexOf(a.met) - order.indexOf(b.met));
  return ruled(caption, ['What was compared', 'This part', 'This engine', 'Allowed', 'Met', 'Evidence'], sorted.map(reason => ({
    id: reason.id,
    'data-met': reason.met,
    cells: [
      compared(reason), ...(reason.terms?.length ? [sum(reason.terms)] : [value(reason.part), value(reason.need)]), allowed(reason), met(reason.met),
      [reason.grade ? say('grade', reason.grade) : 'none', reason.evidence.map(code => el('div', null, sourceStep(code)))],
    ],
  })), { className: 'restack reasons' });
}

/** Those that speak of mounting first; in each the unmet ones first. */
export function reasonsTable(reasons) {
  return [
    table('Does it mount', reasons.filter(reason => reason.axis === 'mounts')),
    table('Does the engine run the same', reasons.filter(reason => reason.axis === 'runs')),
  ];
}
