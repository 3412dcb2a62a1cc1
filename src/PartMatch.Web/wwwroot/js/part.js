// One part: what it is, its values with their evidence, its numbers, where the maker fitted it.

import { askOnce } from './api.js';
import { families, familyOf, variantName } from './choices.js';
import { address, count, danger, el, facts, linked, partLink, plain, rowKey, ruled, say, section, sentence, sourceText, sourced, spanText, ways } from './format.js';
import { addresses, bind, drawStrip } from './page.js';
import { sumLink, sumName } from './sum-links.js';

drawStrip();

/** Minus and plus as the text has its unit; they come in the unit of the quantity. Nothing where the two units have no common zero. */
function tolerance({ text, quantity, minus, plus }) {
  const factor = Number.parseFloat(text) / quantity?.value;
  if (!Number.isFinite(factor) || quantity.unit === 'K') return '';
  const shown = number => Number((number * factor).toPrecision(6));
  return [minus === undefined ? '' : ` −${shown(minus)}`, plus === undefined ? '' : ` +${shown(plus)}`].join('');
}

function reading(book, one, alone) {
  return el('li', { class: one.source?.retractedOn ? 'retracted' : null }, alone ? '' : [el('span', null, plain(one.text), tolerance(one)), ' – '], sourced(book, one.source));
}

/** Where one source states every value once, it is named below the table instead of in every row. */
function values(part) {
  const recorded = part.values.flatMap(value => value.recorded);
  const alike = new Set(recorded.map(one => sourceText(one.source))).size === 1 && recorded.length === part.values.length;
  const known = value => [el('strong', null, value.known.text), value.disputed ? ' – disputed' : ''];
  return section('Values',
    part.values.length === 0 ? el('p', null, 'No value is recorded.') : ruled(`Recorded values of ${part.number}`, ['Feature', 'Known', ...(alike ? [] : ['Recorded, and by whom'])], part.values.map(value => [
      sentence(value.name), known(value), ...(alike ? [] : [el('ul', { class: 'bare' }, value.recorded.map(one => reading(part.book, one, value.recorded.length === 1)))]),
    ]), { className: alike ? 'slim' : 'restack' }),
    alike ? el('p', { class: 'quiet small' }, `All from one source – `, sourced(part.book, recorded[0].source), '.') : null,
    part.notRecorded.length ? el('p', { class: 'small' }, el('strong', null, 'Not recorded: '), part.notRecorded.map(plain).join(', '), '.') : null);
}

const sumOf = (family, { variant, position }) => {
  const link = sumLink(family, position, { variant });
  return link ? el('div', { class: 'small' }, link) : null;
};

/** For a part that nobody fitted: the sums of the places that take its kind, in the family whose book holds it, or in all where a common book does. */
async function sumsOfKind(part) {
  const all = await families().catch(() => []);
  const own = all.some(one => one.family === part.book) ? all.filter(one => one.family === part.book) : all;
  const links = await Promise.all(own.map(async ({ family: code, title }) => {
    const family = await familyOf(code).catch(() => null);
    return (family?.positions ?? []).filter(position => position.kind === part.kind && sumName(family, position.position)).map(({ position, name }) =>
      el('li', null, sumLink(family, position, { part: part.part }), ` – as ${name.toLowerCase()}, ${title}`));
  }));
  return links.flat().length ? [el('p', null, 'What the sums say of it, on an engine of your choice:'), el('ul', null, links)] : null;
}

async function places(part) {
  const codes = [...new Set(part.fitted.map(place => place.family))];
  const known = Object.fromEntries(await Promise.all(codes.map(async code => [code, await familyOf(code).catch(() => null)])));
  return section('Where the maker fitted it', part.fitted.length === 0 ? [el('p', null, 'Nowhere that is recorded.'), await sumsOfKind(part)] : ruled(`Where ${part.number} was fitted`, ['Position', 'Variant', { text: 'Pieces', class: 'count' }, 'Span', 'Elsewhere'], part.fitted.map(place => [
    [place.positionName, sumOf(known[place.family], place)],
    el('a', { href: address('family.html', { family: place.family, variant: place.variant }) }, variantName(known[place.family], place.variant)),
    place.quantity === undefined ? 'not recorded' : String(place.quantity), spanText(place) || 'always',
    el('ul', { class: 'bare inline' }, (known[place.family]?.variants ?? []).filter(variant => !part.fitted.some(other => other.variant === variant.variant && other.position === place.position)).map(variant =>
      el('li', null, el('a', { href: address('fit.html', { family: place.family, variant: variant.variant, position: place.position, part: part.part }) }, `on ${variant.variant}?`)))),
  ]), { className: 'restack' }));
}

function replacements(book, title, list) {
  return list.length === 0 ? null : ruled(title, ['Part', 'Way', 'Limits', 'Evidence'], list.map(link => [
    [partLink(link.part), link.quantity > 1 ? ` ×${link.quantity}` : '', link.with.length ? [' with ', link.with.map(part => [partLink(part), ' '])] : ''],
    link.way === 'both' ? 'either stands in for the other' : 'new for old only', [link.variants.length ? `only ${link.variants.join(', ')}` : '', spanText(link)].filter(Boolean).join('; ') || 'none recorded', [sourced(book, link.source), link.note ? `. ${sentence(link.note)}` : ''],
  ]), { className: 'restack' });
}

function contents(title, list) {
  return list.length === 0 ? null : ruled(title, ['Part', { text: 'Pieces', class: 'count' }, 'Certain'], list.map(row => [
    linked(row.part ?? row.set ?? ''), row.quantity === undefined ? 'not recorded' : String(row.quantity), row.certainty ?? (row.certain ? 'certain' : 'possible'),
  ]));
}

const right = text => ({ text, class: 'count' });

/** A curve over one measure as a list; over two as a table, the first down, the second across. */
function curveTable({ curve, points }) {
  const name = sentence(plain(curve));
  if (points.some(point => point.y === undefined)) return ruled(name, ['At', right('Value')], points.map(point => [point.x.text, point.value.text]), { className: 'slim' });
  const across = [...new Map(points.map(point => [point.y.value, point.y.text])).entries()].toSorted(([a], [b]) => a - b);
  const down = [...new Map(points.map(point => [point.x.value, point.x.text])).entries()];
  return ruled(name, ['At', ...across.map(([, text]) => right(text))], down.map(([x, text]) => [text, ...across.map(([y]) =>
    points.find(point => point.x.value === x && point.y.value === y)?.value.text ?? '–')]), { className: 'slim' });
}

const curves = part => part.curves.map(curve => section(`Curve: ${plain(curve.curve)}`, curveTable(curve)));

async function warning(part) {
  const answer = await askOnce(`/api/numbers/${encodeURIComponent(part.part)}/look-alikes?limit=3`).catch(() => null);
  const dangerous = (answer?.lookAlikes ?? []).filter(other => other.danger !== 'none');
  if (dangerous.length === 0) return null;
  return el('div', { class: 'notice' }, el('p', null, el('strong', null, 'Easily taken for: '), dangerous.map((other, index) => [index ? '; ' : '', partLink(other.part, other.number), ` ${other.name ?? ''}, `, danger(other.danger), ' ', linked(other.dangerText.replace(/^Ease/, 'ease').replace(/\.$/, ''))]), '. ',
    el('a', { href: address('tell-apart.html', { parts: part.part }) }, 'Tell them apart before paying'), ' · ', el('a', { href: address('look-alikes.html', { number: part.part }) }, 'All its look-alikes')));
}

/** The ways to its records. */
function keep({ book, part }) {
  const key = rowKey(part);
  return ways(
    ['Edit this part', address('record.html', { book, table: 'parts', key })], ['Its values', address('record.html', { book, table: 'values', where: `part:${part}` })],
    ['Offers and prices', address('offers.html', { part })], ['Add a value', `${address('record.html', { book, table: 'values', part })}&new`], ['History', address('history.html', { book, table: 'parts', key })]);
}

async function show(part) {
  const { findingsOf } = await import('./part-findings.js'); // not before there is a part to show
  return [
    el('section', { class: 'headline' }, el('h2', { 'data-first': true, tabindex: '-1' }, el('span', { class: 'number' }, part.number), ` ${part.name}`),
      facts([
        ['Maker', part.makerName ?? part.maker], ['Kind', part.kindName], ['Note', part.note], ['Book', el('a', { href: address('record.html', { book: part.book }) }, part.book)], ['Source', part.source ? sourced(part.book, part.source) : ''],
        ['Other numbers', part.numbers.length > 1 ? el('ul', { class: 'bare' }, part.numbers.filter(one => one.number !== part.number || one.maker !== part.maker).map(one => el('li', null, el('span', { class: 'number' }, one.number), ` – ${one.maker}, ${say('sort', one.sort)}`))) : ''],
      ]), keep(part)),
    await warning(part),
    await findingsOf(part),
    await places(part),
    section('Replaced by these newer numbers', replacements(part.book, 'Replaced by', part.replacedBy)),
    section('Replaces these older numbers', replacements(part.book, 'Replaces', part.replaces)),
    section('It holds', contents('It holds', part.holds)),
    section('It is held in', contents('It is held in', part.heldIn)),
    values(part),
    curves(part),
    section('Cautions', part.cautions.length ? el('ul', { class: 'cautions' }, part.cautions.map(caution => el('li', null, caution.text))) : null),
  ];
}

async function render(answer) {
  const { asked, parts } = answer;
  const heading = parts.length === 0 ? 'In no book here' : parts.length === 1 ? parts[0].name : `${count(parts.length, 'part')} bear this number`;
  return {
    title: `${asked.number} ${parts.length === 1 ? parts[0].name : ''}`.trim(),
    summary: `${asked.number}.`,
    said: `${heading}.`,
    content: [
      parts.length === 0 ? el('section', { class: 'headline' }, el('h2', { 'data-first': true, tabindex: '-1' }, heading),
        el('p', null, `The number ${asked.number} is neither right nor wrong: no book holds it. `, el('a', { href: address('look-alikes.html', { number: asked.number }) }, 'Show the nearest known numbers'), ', or ', el('a', { href: address('search.html', { q: asked.number }) }, 'search'), '.')) : null,
      parts.length > 1 ? el('p', { class: 'notice' }, `${heading}: the number alone does not say which. Each is shown.`) : null,
      await Promise.all(parts.map(show)),
      addresses(answer),
    ],
  };
}

bind({
  toApi: query => (query.size ? `/api/parts/${encodeURIComponent(query.get('number') ?? ' ')}${query.get('maker') ? `?maker=${encodeURIComponent(query.get('maker'))}` : ''}` : null),
  render,
  empty: () => el('p', { class: 'quiet' }, 'Write a part number, or ', el('a', { href: 'search.html' }, 'search by words'), '.'),
});
