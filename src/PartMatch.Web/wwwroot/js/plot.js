// A drawing from the server, put into the page so that the page's colours hold for it, with its numbers behind it.

import { ask } from './api.js';
import { el, ruled } from './format.js';

async function drawing(link) {
  const answer = await fetch(link, { headers: { Accept: 'image/svg+xml' } });
  if (!answer.ok) throw new Error(`no drawing at ${link}: ${answer.status}`);
  return document.importNode(new DOMParser().parseFromString(await answer.text(), 'image/svg+xml').documentElement, true);
}

function numbers(link, title) {
  const holder = el('details', null, el('summary', null, 'The numbers', el('span', { class: 'unseen' }, ` of ${title}`)));
  holder.addEventListener('toggle', async () => {
    if (!holder.open || holder.dataset.filled) return;
    holder.dataset.filled = 'true';
    const { table } = await ask(link.replace(/\.svg(?=\?|$)/, '.json'));
    holder.append(ruled(title, table.columns, table.rows));
  });
  return holder;
}

/** A figure of one `{name, title, link}` of an answer. The drawing arrives by itself; `described` puts what it says of itself under it. */
export function plotFigure({ name, title, link, described }) {
  const holder = el('div', { class: 'plot-holder', tabindex: '0', role: 'group', 'aria-label': title }, el('p', { class: 'waiting' }, 'Drawing …'));
  const said = described ? el('p', { class: 'small' }) : null;
  drawing(link).then(svg => {
    holder.replaceChildren(svg);
    if (said) said.textContent = svg.querySelector('desc').textContent;
  }, () => holder.replaceChildren(el('p', { class: 'quiet' }, 'The drawing could not be fetched; its numbers stand below.')));
  return el('figure', { class: 'plot-sheet', 'data-plot': name },
    holder,
    el('figcaption', null, el('strong', null, title), ' · ', el('a', { href: link }, 'Address of the drawing'), said, numbers(link, title)));
}

/** What is drawn, for the line of a fold. */
export const titles = plots => (plots ?? []).map(plot => plot.title).join('; ');

/** All drawings of an answer. */
export const plotFigures = plots => (plots ?? []).map(plotFigure);
