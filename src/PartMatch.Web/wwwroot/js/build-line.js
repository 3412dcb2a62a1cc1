// The lines of a plan: what is done at a position, as word and shape, with what it costs, how sure it is, and the ways to ask about it.

import { groupHead } from './build-table.js';
import { address, count, el, linked, pageOf, partLink, plain, ruled, sentence, sentences, sureness, svg, verdict } from './format.js';
import { codeOf, money } from './offer-words.js';
import { listedAs, states } from './build-words.js';

export const actionWords = {
  'keep': 'keep', 'keep-with-work': 'keep, with work', 'replace': 'replace', 'add': 'add', 'leave-off': 'leave off', 'renew': 'renew',
};

// The place of a part, on 24 × 20: filled by the donor's own, by another, by a new one of the same, or by nothing.
const frame = 'M3 5 V17 H21 V5';
const shapes = {
  'keep': [['path', { d: frame, class: 'outline' }], ['rect', { x: 6, y: 6, width: 12, height: 8.5, class: 'solid' }]],
  'keep-with-work': [['path', { d: frame, class: 'outline' }], ['path', { d: 'M6 6 H13 L10 10 L13 14.5 H6 Z', class: 'solid' }],
    ['path', { d: 'M15.5 6 H18 V14.5 H15.5 L12.8 10 Z', class: 'outline' }]],
  'replace': [['path', { d: frame, class: 'outline' }], ['path', { d: 'M6 14.5 L12 5 L18 14.5 Z', class: 'solid' }]],
  'add': [['path', { d: frame, class: 'outline' }], ['path', { d: 'M12 4 V14 M7 9 H17', class: 'outline' }]],
  'leave-off': [['path', { d: frame, class: 'dashed' }], ['path', { d: 'M7 3 L17 13 M17 3 L7 13', class: 'outline' }]],
  'renew': [['path', { d: frame, class: 'outline' }], ['rect', { x: 6, y: 6, width: 12, height: 8.5, class: 'outline' }],
    ['path', { d: 'M8.5 10 L11 12.5 L16 7.5', class: 'outline' }]],
};

/** What is done, as shape and word. */
export function actionMark(action, text = sentence(actionWords[action])) {
  return el('span', { class: 'action', 'data-action': action },
    svg('svg', { viewBox: '0 0 24 20', class: 'shape', 'aria-hidden': 'true', focusable: 'false' },
      shapes[action].map(([tag, attributes]) => svg(tag, attributes))), el('span', null, text));
}

const costs = line => line.cost && Number(line.cost.amount) !== 0;

/** What mounts, feeds and uses the engine is declared: nobody buys or fits it. */
const isDeclared = line => line.group === 'services';

/**
 * Lines that keep what is there, cost nothing and leave nothing to decide. That a kept part is not inspected is said there too.
 * What is declared stands apart.
 */
export function staysAsItIs(lines) {
  const isQuiet = line => (line.action === 'keep' || (line.action === 'leave-off' && !line.donorHas)) && !line.unproven && !costs(line);
  const parts = lines.filter(line => !isDeclared(line));
  return { parts, changed: parts.filter(line => !isQuiet(line)), stays: parts.filter(isQuiet), declared: lines.filter(isDeclared) };
}

const pieces = line => (line.pieces === undefined ? '' : line.pieces > 1 ? ` × ${line.pieces}` : '');

/** A number or a day is read at a glance only where no line ends within it. */
const whole = text => el('span', { class: 'whole' }, text);

/** Of what is bought as one for several positions, a line's cost is its share; the price is that of the whole. */
const bought = (one, { sellers, shared }) => [[
  `${count(one.pieces, 'piece')} ${shared.has(one.offer) ? `within “${shared.get(one.offer)}” ` : ''}from ${sellers.get(codeOf(one.seller)) ?? one.seller}`,
  `${one.packs > 1 ? `${one.packs} × ` : ''}${money(one.price)}`,
  'there on ',
].join(', '), whole(one.arrivesOn)];

function listing(one, line) {
  const listed = listedAs(one.numberAsWritten, line.part ? [line.part] : line.oneOf);
  return listed && [', ', listed];
}

const cameAs = { ordered: 'on the way', arrived: 'there, not looked at', checked: 'checked and right' };

function what(line, about) {
  const parts = line.part ? [line.part] : line.oneOf;
  return [
    parts.length === 0 ? el('span', { class: 'quiet' }, 'nothing')
      : [line.part ? '' : 'one of ', parts.map((part, index) => [index ? ', ' : '', partLink(part)]), pieces(line)],
    line.partName ? el('div', null, line.partName) : null,
    line.works.map(work => el('div', null, 'Work: ', work)),
    line.buy.map(one => el('div', { class: 'small' }, bought(one, about), listing(one, line))),
    (line.bought ?? []).map(one => el('div', { class: 'small' }, `${one.pieces} of order ${one.order}: ${cameAs[one.state]}`)),
  ];
}

const numbers = parts => parts.split(' or ').map((part, index) => [index ? ' or ' : '', whole(part.replace(/^[^:]*:/, ''))]);

function has(line) {
  if (isDeclared(line)) return line.donorHas ? ['donor: ', numbers(line.donorHas)] : 'donor: not recorded';
  return line.donorHas ? ['has ', numbers(line.donorHas), line.donorState ? `: ${states[line.donorState]}` : ''] : 'has nothing there';
}

/** The address of this plan with a line asked about. */
export const askedAbout = (query, line, part) => address('build.html', {
  build: query.get('build'), version: query.get('version'), objective: query.get('objective'), on: query.get('on'), donor: query.get('donor'), line, part,
});

function because(line, { query, parts }) {
  const what = el('span', { class: 'unseen' }, ` (${line.name})`);
  return [
    el('p', null, linked(sentences(line.because), parts)),
    line.flags.length ? el('ul', { class: 'flags' }, line.flags.map(flag => el('li', null, sentence(flag)))) : null,
    el('p', { class: 'acts ways-on' }, el('a', { href: askedAbout(query, line.position), 'data-line': line.position }, 'Why?', what),
      el('a', { href: askedAbout(query, line.position, 'another'), 'data-line': line.position }, 'Why not another?', what.cloneNode(true))),
  ];
}

// A line's cost is that of its goods: sending is of a basket, work can be of several lines.
const heads = ['Position', 'What is done', 'With what', { text: 'Goods and import', class: 'count' }, 'How sure', 'Because'];

function row(line, about) {
  const fit = [verdict(line.headline, { short: true }), el('div', null, sureness(line.sureness))];
  return {
    id: `line-${line.position}`, 'data-position': line.position, 'data-action': line.action,
    cells: [
      [sentence(line.name), el('div', { class: 'quiet small plain-name' }, has(line))],
      isDeclared(line) ? line.actionText : actionMark(line.action, line.actionText), what(line, about),
      { cell: [costs(line) ? money(line.cost) : el('span', { class: 'quiet' }, '–'), line.priceRange ? el('div', { class: 'small' }, line.priceRange)
        : null, line.buy.some(one => about.shared.has(one.offer)) ? el('div', { class: 'quiet small' }, 'its share, by what each costs alone') : null,
      line.works.length ? el('div', { class: 'quiet small' }, 'its work is counted apart') : null], class: 'count' },
      [line.fit ? el('a', { class: 'across', href: pageOf(line.fit) }, fit[0]) : fit[0], fit[1], line.unproven
        ? el('strong', { class: 'unproven' }, 'Unproven: taken on trust') : null,
        line.reference ? el('div', { class: 'quiet small' }, `against ${line.reference}`) : null],
      because(line, about),
    ],
  };
}

/** Lines in one table, each group under its head. */
export function lineTable(caption, lines, about) {
  const groups = [...new Set(lines.map(line => line.group))];
  const rows = groups.flatMap(group => [groupHead(sentence(plain(group)), heads.length),
    ...lines.filter(line => line.group === group).map(line => row(line, about))]);
  return ruled(caption, heads, rows, { className: 'restack plan-lines' });
}
