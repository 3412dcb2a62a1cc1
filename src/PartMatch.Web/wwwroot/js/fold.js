// What stands behind an answer: folded on the screen, open on paper.

import { count, el, ruled } from './format.js';

/** A section folded behind its heading, with a few words on what is in it; on paper it stands open. Left out when it has nothing to say. A title may be a heading of its own. */
export function fold(title, short, ...content) {
  const kept = content.flat(Infinity).filter(Boolean);
  return kept.length === 0 ? null : el('details', { class: 'fold on-paper' }, el('summary', null, title instanceof Node ? title : el('h2', null, title), short ? el('span', { class: 'quiet small' }, short) : null), kept);
}

/** The same, folded only where the window is narrow. */
export function foldNarrow(title, short, ...content) {
  const place = fold(title, short, ...content);
  if (place) place.open = matchMedia('(min-width: 44.01rem)').matches;
  return place;
}

/** How many rows of a ranked table stand before the fold. */
const firstRows = 5;

/** A ranked table: its first rows, and the others folded; on paper all of them. */
export function ranked(caption, heads, rows, { what, className = '' }) {
  const table = (text, some) => ruled(text, heads, some, { className: `restack ranked ${className}`.trim() });
  const rest = rows.slice(firstRows);
  return [table(caption, rows.slice(0, firstRows)),
    rest.length ? el('details', { class: 'on-paper' }, el('summary', null, `The other ${count(rest.length, what)}`), table(`${caption}: from place ${firstRows + 1}`, rest)) : null];
}
