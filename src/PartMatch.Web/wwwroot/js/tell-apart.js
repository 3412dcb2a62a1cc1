// Tell apart: the form, and asking. What has been seen travels in the address, so that a key can be left and taken up again.

import { familyShower, offerFamilies, variantName } from './choices.js';
import { address, el, plain } from './format.js';
import { bind, drawStrip } from './page.js';

const form = document.querySelector('form[data-question]');
const { family, parts } = form.elements;
const toolsCell = document.getElementById('tools-cell');
const seenCell = document.getElementById('seen-cell');
const joinedTools = form.querySelector('input[type=hidden][name=tools]');
const tools = ['steel-rule', 'caliper', 'gauge', 'scale', 'meter', 'bench'];
let shown = null;

drawStrip();

/** Shows the fields of one way to name the candidates; the others leave the question. */
function showBy(by) {
  for (const block of form.querySelectorAll('[data-by]')) {
    block.hidden = block.dataset.by !== by;
    for (const control of block.matches('fieldset') ? [block] : block.querySelectorAll('input, select')) control.disabled = block.hidden;
  }

  family.dataset.field = by === 'variants' ? 'family parts' : 'family'; // neither given: the server says so of the parts
}

function showMode(mode) {
  toolsCell.hidden = mode !== 'in-hand';
  joinedTools.disabled = toolsCell.hidden;
}

const ofFamily = familyShower();
const showFamily = code => ofFamily(code, found => {
  shown = found;
  document.getElementById('variants').replaceChildren(...(shown?.variants ?? []).map(variant => el('label', { class: 'choice' },
    el('input', { type: 'checkbox', name: 'variants', value: variant.variant, 'data-join': ',', id: `variant-${variant.variant}` }), ` ${variant.name}`)));
});

/** Every tool ticked is the question without tools: the server takes all of them. */
function joinTools() {
  const ticked = [...document.querySelectorAll('#tools input:checked')].map(box => box.value);
  joinedTools.value = ticked.length === tools.length ? '' : ticked.join(',') || 'none';
}

function offerTools(given) {
  const owned = given?.split(',') ?? tools;
  document.getElementById('tools').replaceChildren(...tools.map(tool => el('label', { class: 'choice' },
    el('input', { type: 'checkbox', value: tool, id: `tool-${tool}`, checked: owned.includes(tool), onchange: joinTools }), ` ${plain(tool)}`)));
  joinTools();
  if (given && owned.some(tool => !tools.includes(tool))) joinedTools.value = given; // so that the server can say what is wrong with it
}

async function offerSeen(all) {
  const { seenText } = all.length ? await import('./tell-apart-key.js') : {};
  seenCell.hidden = all.length === 0;
  document.getElementById('seen').replaceChildren(...all.map((seen, index) => el('label', { class: 'choice' },
    el('input', { type: 'checkbox', name: 'seen', value: seen, 'data-row': true, id: `seen-${index}`, checked: true }), ` ${seenText(seen)}`)));
}

form.addEventListener('change', event => {
  if (event.target.name === 'by') showBy(event.target.value);
  if (event.target.name === 'mode') showMode(event.target.value);
  if (event.target === family) showFamily(family.value);
});

async function prepare(query) {
  await showFamily(await offerFamilies(family, query.get('family')));
  const by = query.has('family') || query.has('variants') ? 'variants' : 'parts';
  form.querySelector(`#by-${by}`).checked = true;
  showBy(by);
  showMode(query.get('mode') ?? 'before-paying');
  offerTools(query.get('tools'));
  await offerSeen(query.getAll('seen'));
}

/** This page with the same candidates and other observations, or another mode. */
function again(query, change) {
  const { mode = query.get('mode'), seen = query.getAll('seen') } = change;
  return address('tell-apart.html', { parts: query.get('parts'), family: query.get('family'), variants: query.get('variants'), mode, tools: mode === 'in-hand' ? query.get('tools') : null, seen });
}

let dressed = null;

/** How an answer is written and drawn; not before there is one: the blank form loads without it. */
async function answerParts() {
  dressed ??= new Promise(done => document.head.append(el('link', { rel: 'stylesheet', href: 'css/tell-apart.css', onload: done, onerror: done })));
  const [answer, key] = await Promise.all([import('./tell-apart-answer.js'), import('./tell-apart-key.js'), dressed]);
  return { ...answer, ...key };
}

const namedInShort = 6;

function inShort(list) {
  const each = list.split(',').map(part => part.trim().replace(/^[^:]*:/, '')).filter(Boolean);
  return each.length > namedInShort ? `${each.slice(0, namedInShort - 1).join(', ')} and ${each.length - namedInShort + 1} more` : each.join(', ');
}

bind({
  prepare,
  toApi: query => (query.size ? `/api/tell-apart?${query}` : null),
  render: async (answer, query) => {
    const { seenText, tellApartAnswer } = await answerParts();
    const { asked } = answer;
    const what = asked.family ? [shown?.title ?? asked.family, ...(query.get('variants') ? [answer.candidates.map(one => one.candidate).join(', ')] : [])].join(': ') : inShort(parts.value);
    return {
      title: what,
      summary: [what, asked.mode === 'in-hand' ? 'in hand' : 'before paying', ...asked.seen.map(seenText)].join('; ') + '.',
      said: `Answer: ${answer.headlineText}`,
      content: tellApartAnswer(answer, {
        family: shown, alone: asked.family || parts.value.includes(',') ? '' : parts.value, nameOf: one => (asked.family ? variantName(shown, one.candidate) : one.name),
        with: more => again(query, { seen: [...query.getAll('seen'), ...more] }),
        without: seen => again(query, { seen: query.getAll('seen').filter(one => one !== seen) }),
        inMode: mode => again(query, { mode }),
      }),
    };
  },
  empty: () => el('p', { class: 'quiet' }, 'For example ', el('a', { href: address('tell-apart.html', { parts: 'P-26-1147-C' }) }, 'P-26-1147-C'), ' and what it is taken for, or ',
    el('a', { href: address('tell-apart.html', { family: 'tern-16', mode: 'in-hand' }) }, 'which Tern 16 an engine is'), '.'),
});
