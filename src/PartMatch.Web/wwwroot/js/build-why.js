// Why a line is as it is, and why nothing else is there: opened under the line, its address in the window's.

import { Refusal, ask, newest } from './api.js';
import { faultSummary } from './faults.js';
import { el, evidenceLink, linked, pageOf, partLink, ruled, sentence, sentences, sureness, verdict } from './format.js';
import { askedAbout } from './build-line.js';

const grounds = {
  'wish': 'you asked for it', 'goal': 'the goal', 'target': 'what it is to become', 'donor': 'the engine you have', 'need': 'a need',
    'joint': 'where two positions mate', 'stack': 'a sum of lengths',
  'companion': 'what must change with it', 'finding': 'a finding', 'renewal': 'what is opened', 'objective': 'what counts first',
};
const reading = newest();
let open = null;

const nameOf = (about, position) => about.shown.family.positions.find(one => one.position === position)?.name ?? position;

function step(one, about, query) {
  const ways = one.on.filter(position => position !== query.get('line'));
  return el('li', null,
    el('strong', null, sentence(nameOf(about, one.position))), ` – ${grounds[one.ground]}`, one.code ? el('span', { class: 'number small' }, ` ${one.code}`)
      : null, one.sureness ? [' ', sureness(one.sureness)] : null,
    el('p', null, linked(sentences(one.text))),
    one.evidence.length ? el('p', { class: 'small quiet' }, 'By ',
      one.evidence.map((code, index) => [index ? ', ' : '', evidenceLink(about.shown.build.family, code)])) : null,
    ways.length ? el('p', { class: 'small acts' }, 'Stands on ',
      ways.map((position, index) => [index ? ', ' : '', el('a', { href: askedAbout(query, position) }, nameOf(about, position))])) : null);
}

function alternatives(why, query) {
  if (why.alternatives.length === 0) return el('p', null, 'Nothing else is recorded that could be there.');
  return ruled('What else could be there, the nearest in cost first', ['Instead', 'Will it fit', 'Why not', 'Force it'], why.alternatives.map(one => [
    [one.part.includes(':') ? partLink(one.part) : one.part, el('div', { class: 'plain-name' }, one.name)],
    [one.fit ? el('a', { class: 'across', href: pageOf(one.fit) }, verdict(one.headline, { short: true })) : verdict(one.headline, { short: true }),
      el('p', { class: 'small' }, sentences(one.text))],
    linked(sentences(one.whyNot)),
    el('a', { class: 'acts', href: askedAbout(query, query.get('line'), one.part) }, 'What if?', el('span', { class: 'unseen' }, ` (${one.name})`)),
  ]), { className: 'restack' });
}

/** Any other part, by its number; `none` leaves the position empty. */
function numberForm(query) {
  const part = query.get('part');
  const input = el('input', { id: 'other-part', name: 'part', class: 'typed', autocomplete: 'off', autocapitalize: 'characters', spellcheck: 'false',
    'aria-describedby': 'other-part-hint', value: part && part !== 'another' ? part : '' });
  return el('form', {
    class: 'question asking', novalidate: true,
    onsubmit(event) {
      event.preventDefault();
      if (input.value.trim()) event.target.dispatchEvent(new CustomEvent('asked',
        { bubbles: true, detail: askedAbout(query, query.get('line'), input.value.trim()) }));
      else input.focus();
    },
  }, el('div', { class: 'cells' }, el('div', { class: 'cell' }, el('label', { for: 'other-part' }, 'Why not this one?'), input,
    el('p', { class: 'hint', id: 'other-part-hint' }, 'A number as you have it; “none” asks for nothing there.'))),
      el('div', { class: 'actions' }, el('button', null, 'Ask')));
}

async function whyNot(query, about) {
  const part = query.get('part');
  if (!part || part === 'another') return null;
  const answer = await ask(about.apiOf('why-not', query, { position: query.get('line'), part }));
  return (await import('./build-why-not.js')).whyNotAnswer(answer);
}

async function content(query, about) {
  const line = query.get('line');
  const [why, forced] = await Promise.all([ask(about.apiOf('why', query, { line })), whyNot(query, about)]);
  const own = why.line;
  return { forced: Boolean(forced), nodes: [
    el('p', null, linked(sentences(own.because), [own.part, ...own.oneOf])),
    own.fit ? el('p', null, 'Will it fit beside the plan’s own neighbours: ', el('a', { class: 'across', href: pageOf(own.fit) }, verdict(own.headline)),
      ' ', sureness(own.sureness)) : null,
    why.steps.length ? el('ol', { class: 'chain' }, why.steps.map(one => step(one, about, query))) : null,
    el('section', { class: 'another' }, el('h4', { tabindex: '-1' }, 'Why not another?'), forced, alternatives(why, query), numberForm(query)),
    el('p', { class: 'small acts' }, el('a', { href: why.permalink }, 'The same as JSON')),
  ] };
}

function close() {
  open?.row.remove();
  open = null;
}

/** Puts the panel under its line, or takes it away; gives whether one is open. */
export function openPanel(place, query, { byHand, ...about }) {
  const line = query.get('line');
  const at = line ? place.querySelector(`tr[data-position="${CSS.escape(line)}"]`) : null;
  const before = open?.line;
  const part = query.get('part');
  if (open?.row.isConnected && line === before && part === open.part) return true; // a step within the sheet
  close();
  if (!line || !at) {
    if (byHand && before) place.querySelector(`tr[data-position="${CSS.escape(before)}"] a[data-line]`)?.focus();
    return false;
  }

  const folded = at.closest('details');
  if (folded) folded.open = true;
  const title = el('h3', { tabindex: '-1' }, `${nameOf(about, line)}: why this?`);
  const body = el('div', { 'aria-busy': 'true' }, el('p', { class: 'waiting' }, 'Working it out …'));
  const row = el('tr', { class: 'asked-about' }, el('td', { colspan: 6 },
    el('div', { class: 'panel', role: 'region', 'aria-label': `Why ${nameOf(about, line)}` },
    title, body, el('p', { class: 'buttons acts' }, el('a', { class: 'button', href: askedAbout(query) }, 'Close')))));
  open = { line, part, row };
  at.after(row);
  if (byHand) title.focus();
  reading(() => content(query, about), ({ forced, nodes }) => {
    body.removeAttribute('aria-busy');
    body.replaceChildren(...nodes.flat(Infinity).filter(Boolean));
    document.getElementById('status').textContent = `Why ${nameOf(about, line)}: answered.`;
    if (byHand && query.has('part')) body.querySelector(forced ? '.forced h4' : '.another h4')?.focus();
  }).catch(error => {
    if (!(error instanceof Refusal)) throw error;
    body.removeAttribute('aria-busy');
    body.replaceChildren(faultSummary(null, error.problem));
  });
  return true;
}
