// Builds elements without markup strings, and holds the words and shapes in which every page speaks of verdicts.

const drawing = 'http://www.w3.org/2000/svg';

function fill(node, attributes, children) {
  for (const [name, value] of Object.entries(attributes ?? {})) {
    if (value === null || value === undefined || value === false) continue;
    if (name.startsWith('on')) node.addEventListener(name.slice(2), value);
    else node.setAttribute(name, value === true ? '' : value);
  }
  node.append(...children.flat(Infinity).filter(child => child !== null && child !== undefined && child !== false && child !== ''));
  return node;
}

/** An element; `attributes` may hold listeners as `onclick`. Children are nodes, texts, or lists of them; empty ones are left out. */
export function el(tag, attributes, ...children) {
  return fill(document.createElement(tag), attributes, children);
}

export function svg(tag, attributes, ...children) {
  return fill(document.createElementNS(drawing, tag), attributes, children);
}

// A peg and the socket it should sit in, drawn on 28 × 24: read without colour.
const socket = 'M2 10 H8 V21 H20 V10 H26';
const shapes = {
  'fits': [['path', { d: socket, class: 'outline' }], ['rect', { x: 9.5, y: 3, width: 9, height: 16.5, class: 'solid' }]],
  'fits-with-work': [['path', { d: socket, class: 'outline' }], ['path', { d: 'M9.5 3 H18.5 V8 L15.5 10 L18.5 12 V19.5 H9.5 Z', class: 'solid' }], ['path', { d: 'M21 4 L26 7 M21 7 L26 4', class: 'outline' }]],
  'mounts-but-runs-differently': [['path', { d: socket, class: 'outline' }], ['rect', { x: 9.5, y: 9, width: 9, height: 10.5, class: 'solid' }], ['path', { d: 'M3 5 C7 -1 10 9 14 4 S21 1 25 5 M25 5 L21.5 5.4 M25 5 L23.6 1.8', class: 'outline' }]],
  'does-not-fit': [['path', { d: socket, class: 'outline' }], ['rect', { x: 5, y: 2, width: 18, height: 6, class: 'solid' }], ['path', { d: 'M10.5 12 L17.5 19 M17.5 12 L10.5 19', class: 'outline' }]],
  'not-known-yet': [['path', { d: socket, class: 'outline' }], ['rect', { x: 9.5, y: 3, width: 9, height: 15, class: 'dashed' }]],
};

export const headlines = {
  'fits': 'Fits', 'fits-with-work': 'Fits with work', 'mounts-but-runs-differently': 'Mounts but runs differently',
  'does-not-fit': 'Does not fit', 'not-known-yet': 'Not known yet',
};

const shortHeadlines = { ...headlines, 'mounts-but-runs-differently': 'Runs differently', 'fits-with-work': 'With work', 'not-known-yet': 'Not known' };

/** The peg-and-socket shape of a headline. */
export function verdictShape(headline) {
  return svg('svg', { viewBox: '0 0 28 24', class: 'shape', 'aria-hidden': 'true', focusable: 'false' }, shapes[headline].map(([tag, attributes]) => svg(tag, attributes)));
}

/** Shape and words of a headline, for tables. */
export function verdict(headline, { short = false } = {}) {
  return el('span', { class: 'verdict', 'data-headline': headline }, verdictShape(headline), el('span', null, (short ? shortHeadlines : headlines)[headline]));
}

// Two limits and where the value lies: inside, outside, across one of them.
const metShapes = { 'yes': [9, 'solid'], 'no': [24, 'solid'], 'not-known': [16, 'dashed'] };
const metWords = { 'yes': 'met', 'no': 'not met', 'not-known': 'not known' };

/** Where a value lies, by `yes`, `no` or `not-known`; `text` says it in other words. */
export function met(value, text = metWords[value]) {
  const [x, look] = metShapes[value];
  return el('span', { class: 'met', 'data-met': value },
    svg('svg', { viewBox: '0 0 34 14', class: 'shape', 'aria-hidden': 'true', focusable: 'false' },
      svg('path', { d: 'M5 1 V13 M20 1 V13', class: 'outline' }), svg('rect', { x, y: 4, width: 7, height: 6, class: look })),
    text);
}

const ladder = ['unproven', 'indicated', 'documented', 'proven'];
// The same words as the server's; a test holds them to it.
const surenessMeaning = {
  proven: 'Somebody tried it on such an engine, or measured it there, and nothing that counts says otherwise.',
  documented: 'The maker says so, in a document or by the numbers; or it was tried or measured, and something weaker says otherwise.',
  indicated: 'It follows from measured or documented values, or a builder reports it; or the maker says so, and something weaker says otherwise.',
  unproven: 'No more than that nothing recorded speaks against it; or inferred, disputed, or not known.',
};

function steps(filled, of) {
  return svg('svg', { viewBox: `0 0 ${of * 7} 12`, class: 'shape steps', 'aria-hidden': 'true', focusable: 'false' },
    Array.from({ length: of }, (_, index) => svg('rect', { x: index * 7 + 1, y: 9 - index * 2.2, width: 5, height: 2 + index * 2.2, class: index < filled ? 'solid' : 'outline' })));
}

/** How sure an answer is: steps and word. Short, for narrow cells, the word is only heard and shown on pointing. */
export function sureness(value, { short = false } = {}) {
  const word = short ? el('span', { class: 'unseen' }, value) : value;
  return el('span', { class: 'sureness', title: `${sentence(value)}: ${surenessMeaning[value]}` }, steps(ladder.indexOf(value) + 1, 4), word);
}

/** The four words with their meaning, surest first, folded. */
export function surenessLegend() {
  return el('details', { class: 'legend-sureness small' }, el('summary', null, 'How sure a verdict is: what the four words mean'),
    el('dl', { class: 'facts' }, ladder.toReversed().map(word => [el('dt', null, sureness(word)), el('dd', null, surenessMeaning[word])])));
}

export const meaningOfSureness = value => surenessMeaning[value];

const dangers = ['none', 'low', 'medium', 'high'];

export function danger(value) {
  return el('span', { class: 'danger', 'data-danger': value }, steps(dangers.indexOf(value), 3), value === 'none' ? 'no danger' : `${value} danger`);
}

const words = {
  mounts: { 'yes': 'yes', 'with-work': 'with work', 'no': 'no', 'not-known': 'not known' },
  runs: { 'same': 'the same', 'differently': 'differently', 'not-known': 'not known' },
  consequence: { nuisance: 'nuisance', loss: 'loss of output', damage: 'engine damage', injury: 'injury' },
  effect: { stops: 'stops it from mounting', work: 'needs work', alters: 'alters running' },
  by: { identity: 'what part it is', feature: 'a feature', joint: 'where two positions mate', stack: 'a sum of lengths', companion: 'what must change with it', finding: 'a finding', kind: 'the kind of part' },
  identity: {
    'fitted-here': 'the part the maker fitted here', 'newer-number': 'a newer number of the part fitted here', 'older-number': 'an older number of the part fitted here',
    'same-both-ways': 'a number that stands in for the fitted one both ways', 'another-part': 'another part than the one fitted here', 'unknown-number': 'a number that is in no book here',
  },
  relation: {
    'same-part': 'the same part', 'newer-number': 'a newer number of it', 'older-number': 'an older number of it', 'trap': 'found to be a trap', 'harmless': 'found to be harmless', 'not-judged': 'nobody has judged the pair',
  },
  mixUp: {
    'look-alike-character': 'characters that look alike', 'substitution': 'one character is another', 'adjacent-transposition': 'two neighbours swapped', 'omission': 'one character less',
    'addition': 'one character more', 'jump-transposition': 'two swapped across a third', 'twin': 'a doubled character is another', 'jump-twin': 'a repeated character is another',
    'phonetic': 'digits that sound alike', 'suffix-only': 'only the ending differs', 'two-errors': 'two separate errors',
  },
  method: {
    photo: 'photo', label: 'label', eye: 'eye', count: 'count', 'steel-rule': 'steel rule', caliper: 'caliper', gauge: 'gauge', scale: 'scale', meter: 'meter', bench: 'bench',
  },
  grade: {
    'ran-under-load': 'ran under load', 'trial-fitted': 'trial-fitted', 'makers-document': 'maker’s document', 'measured': 'measured', 'reported': 'reported', 'inferred': 'inferred',
  },
  status: { shared: 'shared', differs: 'differs', 'only-on-some': 'only on some', 'not-known': 'not known' },
  sort: { 'service': 'service number', 'casting-mark': 'casting mark (narrows, never identifies)', 'grade': 'stamped grade', 'supplier': 'supplier’s own', 'kit': 'kit number', 'aftermarket': 'aftermarket' },
};

/** The words for a code of one vocabulary; an unknown code reads as itself. */
export function say(vocabulary, code) {
  return words[vocabulary][code] ?? plain(code);
}

/** A code as words: `head-gasket` becomes `head gasket`. */
export function plain(code) {
  const thread = /^m(\d+)x(\d+)(?:-(\d+))?$/.exec(code);
  if (thread) return `M${thread[1]}×${thread[2]}${thread[3] ? `.${thread[3]}` : ''}`;
  return code.replace(/(?<=[a-z])-|(?<=\d)-(?!\d)/g, ' '); // "p36-1" is not two numbers, and "-6 deg" is no code at all
}

/** First letter large, for texts that begin a sentence here. */
export function sentence(text) {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** The same for every sentence of a text, each ended. A `maker:number` stays as it is, so that it is still known as one. */
export function sentences(text) {
  const large = text.replace(/(^|[.!?] )(\p{Ll})(?![a-z0-9-]*:\S)/gu, (_, before, letter) => before + letter.toUpperCase());
  return /[.!?)]$/.test(large) ? large : `${large}.`;
}

/** Ours: up to four digits as they are, above with a comma for each thousand; sums of money and readings have their own writing. */
export const grouped = many => (many < 10_000 ? String(many) : many.toLocaleString('en'));

export function count(many, one, several = `${one}s`) {
  return `${grouped(many)} ${many === 1 ? one : several}`;
}

/** How near two numbers are written. */
export const slips = near => (near.foldedEdits === 0 ? 'look-alike characters only' : count(near.edits, 'slip'));

/** A page's address with its question; empty values are left out, lists repeat. */
export function address(page, question) {
  const query = new URLSearchParams();
  for (const [name, value] of Object.entries(question ?? {})) {
    for (const one of [value].flat()) if (one !== undefined && one !== null && one !== '') query.append(name, one);
  }
  const text = query.toString().replaceAll('%3A', ':').replaceAll('%2C', ',').replaceAll('%40', '@');
  return text ? `${page}?${text}` : page;
}

/** The page that shows what an API address answers: these have the same question. */
export function pageOf(apiAddress) {
  return apiAddress.replace(/^\/api\/(fit|compare|injectors|fuel-supply|valve-timing|compression|tightening|tell-apart|offers|sellers)(?=\?|$)/, '$1.html');
}

/** A number that leads to its part. `part` is `maker:number`, or a bare number. */
export function partLink(part, text) {
  const shown = text ?? part.replace(/^[^:]*:/, '');
  return el('a', { class: shown.length > 24 ? 'number long' : 'number', href: address('part.html', { number: part }) }, shown);
}

const partInText = '\\b(?=[a-z0-9-]*[a-z])[a-z0-9-]+:[A-Za-z0-9][A-Za-z0-9./-]*[A-Za-z0-9]';

/** A sentence of an answer in which every `maker:number`, and the bare number of each of `parts`, leads to its part. */
export function linked(text, parts = []) {
  const byNumber = new Map(parts.filter(Boolean).map(part => [part.replace(/^[^:]*:/, ''), part]));
  const bare = [...byNumber.keys()].toSorted((a, b) => b.length - a.length).map(number => `(?<![\\w-])${number.replace(/[^\w]/g, '\\$&')}(?![\\w-])`);
  const nodes = [];
  let end = 0;
  for (const found of text.matchAll(new RegExp([partInText, ...bare].join('|'), 'g'))) {
    nodes.push(text.slice(end, found.index), partLink(byNumber.get(found[0]) ?? found[0]));
    end = found.index + found[0].length;
  }
  nodes.push(text.slice(end));
  return nodes;
}

function fromTo(span, name) {
  if (!span) return '';
  if (span.from === undefined) return `${name} up to ${span.to}`;
  return span.to === undefined ? `${name} from ${span.from}` : `${name} ${span.from} to ${span.to}`;
}

/** Build dates and serial numbers in words; empty when neither is limited. */
export function spanText({ built, serial, mark }) {
  return [fromTo(built, 'built'), fromTo(serial, 'serial'), mark].filter(Boolean).join('; ');
}

const open = (from, to) => (from || to ? { from, to } : undefined);

/** The span of a row as it is edited; '' where it is without limits. */
export const rowSpanText = row => spanText({ built: open(row.builtFrom, row.builtTo), serial: open(row.serialFrom, row.serialTo) });

/** Who says so: grade, source, date, and a retraction in words. */
export function sourceText(source) {
  if (!source) return 'no evidence recorded';
  const about = [source.source, source.author, source.date].filter(Boolean).join(', ');
  const taken = source.retractedOn ? ` — retracted ${source.retractedOn}${source.retractedWhy ? `: ${source.retractedWhy}` : ''}` : '';
  return `${say('grade', source.grade)}: ${about || source.evidence}${taken}`;
}

/** The key of a row from its key cells, as the API writes it. */
export const rowKey = (...cells) => cells.map(cell => cell.replaceAll('%', '%25').replaceAll(',', '%2C')).join(',');

/** A key as people read it: its cells that are recorded. */
export const keyText = key => key.split(',').map(decodeURIComponent).filter(Boolean).join(' · ');

/** Ways to records, each a text and an address. */
export const ways = (...pairs) => el('ul', { class: 'bare inline small ways' }, pairs.map(([text, href]) => el('li', null, el('a', { href }, text))));

/** A piece of evidence by its code, leading to its record. A code of a book that this one uses is found there. */
export function evidenceLink(book, code) {
  return el('a', { class: 'number small', href: address('record.html', { book, table: 'evidence', key: code }) }, code);
}

/** Who says so, with the way to the evidence. */
export function sourced(book, source) {
  return source ? [sourceText(source), ' ', evidenceLink(book, source.evidence)] : sourceText(source);
}

/** One row of a ruled table. A cell is what stands in it, or `{cell, ...attributes}`; the first heads its row. */
export function ruledRow(heads, row) {
  const { cells, ...attributes } = Array.isArray(row) ? { cells: row } : row;
  let column = 0;
  return el('tr', attributes, cells.map((one, index) => {
    const { cell, ...own } = one?.cell === undefined ? { cell: one } : one;
    const head = heads[column];
    column += own.colspan ?? 1;
    const about = { 'data-label': head?.text ?? head, class: head?.class, ...own };
    return index === 0 ? el('th', { scope: 'row', ...about }, cell) : el('td', about, el('div', null, cell));
  }));
}

// Only a table that is wider than its place is a region and a stop of the keyboard: the others would be stops without a use.
const watch = new ResizeObserver(entries => {
  for (const { target } of entries) {
    const isWide = target.scrollWidth > target.clientWidth + 1;
    for (const [name, value] of [['role', 'region'], ['tabindex', '0'], ['aria-label', target.querySelector('caption').textContent]]) {
      if (isWide) target.setAttribute(name, value);
      else target.removeAttribute(name);
    }
  }
});

/** A ruled table in a place of its own, which the keyboard can scroll where it has to. Heads are texts or `{text, class}`; rows as `ruledRow` takes them. */
export function ruled(caption, heads, rows, { className = '' } = {}) {
  const head = heads.map(one => el('th', { scope: 'col', class: one.class }, one.text ?? one));
  const body = rows.map(row => ruledRow(heads, row));
  const place = el('div', { class: `scroll ${className}`.trim() },
    el('table', null, el('caption', null, caption), el('thead', null, el('tr', null, head)), el('tbody', null, body)));
  watch.observe(place);
  return place;
}

/** Name and value pairs; pairs without a value are left out. */
export function facts(pairs) {
  return el('dl', { class: 'facts' }, pairs.filter(([, value]) => value !== null && value !== undefined && value !== '').map(([name, value]) => [el('dt', null, name), el('dd', null, value)]));
}

/** A section with its heading; left out when it has nothing to say. */
export function section(title, ...content) {
  const kept = content.flat(Infinity).filter(Boolean);
  return kept.length === 0 ? null : el('section', null, el('h2', null, title), kept);
}
