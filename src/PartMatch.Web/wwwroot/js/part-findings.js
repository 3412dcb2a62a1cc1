// What people found of a part, in every family: one row a finding, each with who says so, how it was tried, and pictures of it.

import { ask } from './api.js';
import { families, familyOf, positionName, variantName } from './choices.js';
import { address, el, evidenceLink, partLink, rowSpanText, ruled, section, sentence, sourceText } from './format.js';

const rowsOf = (book, table, conditions, more = {}) =>
  ask(`/api/books/${encodeURIComponent(book)}/${table}?${new URLSearchParams([...conditions.map(text => ['where', text]), ...Object.entries(more)])}`)
    .then(({ rows }) => rows.map(({ row }) => row));

const outcomes = {
  'yes': 'Mounts', 'with-work': 'Mounts with work', 'no': 'Does not mount', 'same': 'Runs the same', 'differently': 'Runs differently',
};

function ran({ hours, output, outputUnit, fuel } = {}) {
  return [hours ? `${hours} h under load` : '', output ? `${output} ${outputUnit ?? ''}`.trim() : '', fuel].filter(Boolean).join(', ');
}

/** Pictures that belong to one piece of evidence; each opens in full. */
function pictures(photos) {
  return photos.length === 0 ? null : el('div', { class: 'evidence-photos' }, photos.map(({ image, caption }) =>
    el('a', { href: `/api/images/${image}` }, el('img', { src: `/api/images/${image}`, alt: caption ?? 'Photograph without a caption', loading: 'lazy' }))));
}

/** What is recorded of each piece of evidence that the findings rest on, by its code. */
async function evidenceOf(book, codes) {
  const entries = await Promise.all(codes.map(async code => {
    const where = [`evidence:${code}`];
    const [[source], [more], photos] = await Promise.all([
      rowsOf(book, 'evidence', where, { used: 'true' }), rowsOf(book, 'sources', where), rowsOf(book, 'photos', where),
    ]);
    return [code, { source, more, photos }];
  }));
  return Object.fromEntries(entries);
}

function neighbours(row, family) {
  const each = (row.with ?? '').split('|').filter(Boolean).map(text => text.split(/=(.*)/s));
  return each.map(([position, part]) => el('div', null, 'with ', part === 'none' ? 'nothing' : partLink(part), ` as ${positionName(family, position)}`));
}

async function foundIn(code, part) {
  const rows = await rowsOf(code, 'findings', [`part:${part}`], { limit: '100' });
  if (rows.length === 0) return [];
  const [family, evidence] = await Promise.all([familyOf(code).catch(() => null), evidenceOf(code, [...new Set(rows.map(row => row.evidence))])]);
  return rows.map(row => {
    const { source, more, photos } = evidence[row.evidence];
    const question = { family: code, variant: row.variant, position: row.position, part, with: row.with?.split('|') };
    return {
      id: `${code}-${row.finding}`,
      cells: [
        [outcomes[row.outcome], el('div', { class: 'plain-name' }, el('a', { href: address('fit.html', question) },
          `${positionName(family, row.position)}, ${variantName(family, row.variant)}`))],
        [rowSpanText(row) ? el('div', null, rowSpanText(row)) : '', neighbours(row, family), row.note ? sentence(row.note) : ''],
        [sourceText(source), ' ', evidenceLink(code, row.evidence), ran(more) ? el('div', { class: 'quiet' }, ran(more)) : null, pictures(photos)],
      ],
    };
  });
}

/** The section; left out where nobody has recorded anything. A family that cannot be read is left out as well: the rest of the sheet stands. */
export async function findingsOf({ part, number }) {
  const all = await Promise.all((await families()).map(({ family }) => foundIn(family, part).catch(() => [])));
  const rows = all.flat();
  return section('What was found of it', rows.length === 0 ? null
    : ruled(`Findings of ${number}`, ['Found', 'What was seen', 'Who says so'], rows, { className: 'restack found' }));
}
