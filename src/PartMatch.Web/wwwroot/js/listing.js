// A seller's page or words: pasted or dropped, held against the place it is needed for. What it is held against stands in the address; the document stays here.

import { Refusal, ask } from './api.js';
import { familyOf, offerFamilies, offerPositions, offerVariants, positionName, variantName } from './choices.js';
import { clearFaults, faultSummary } from './faults.js';
import { address, el } from './format.js';
import { drawStrip, fillForm, readQuestion } from './page.js';

const form = document.querySelector('form[data-question]');
const { family, variant, position } = form.elements;
const [listing, file, markup] = ['listing', 'file', 'markup'].map(id => document.getElementById(id));
const holder = form.closest('details');
const place = document.getElementById('answer');
const status = document.getElementById('status');
const most = 4 << 20;
const types = { html: 'text/html', htm: 'text/html', mhtml: 'message/rfc822', mht: 'message/rfc822', txt: 'text/plain' };

let shown = null;
let pasted = null; // the markup behind what stands in the field, as the clipboard held it
let asking = 0;

drawStrip();

async function showFamily(code, query = new URLSearchParams()) {
  const found = code ? await familyOf(code) : null;
  if (family.value !== (code ?? '')) return; // another was chosen meanwhile
  shown = found;
  offerVariants(variant, shown, query.get('variant'));
  offerPositions(position, shown, query.get('position'));
}

/** The clipboard holds a page twice: as words, which stand in the field, and as markup, which says more. */
function keepMarkup(html) {
  pasted = html;
  markup.hidden = !html;
  markup.replaceChildren(...(html ? ['Pasted with its markup, which says more than the words. ', el('button', { type: 'button', class: 'plain', onclick: () => keepMarkup(null) }, 'Read only the words')] : []));
}

listing.addEventListener('paste', event => {
  const html = event.clipboardData?.getData('text/html');
  const whole = listing.value === '' || (listing.selectionStart === 0 && listing.selectionEnd === listing.value.length);
  keepMarkup(html && whole ? html : null);
  file.value = '';
});
listing.addEventListener('input', event => {
  if (event.inputType !== 'insertFromPaste') keepMarkup(null); // changed by hand: the markup would say something else
  if (listing.value) file.value = '';
});
file.addEventListener('change', () => {
  if (file.files.length) {
    listing.value = '';
    keepMarkup(null);
  }
});

document.addEventListener('dragover', event => event.preventDefault());
document.addEventListener('drop', event => {
  if (!event.dataTransfer?.files.length) return; // text dropped into the field is the browser's business
  event.preventDefault();
  file.files = event.dataTransfer.files;
  file.dispatchEvent(new Event('change'));
  form.requestSubmit();
});

/** What is to be read, with its type; null where there is nothing. */
function documentSent() {
  const [one] = file.files;
  if (one) return { body: one, type: types[one.name.split('.').pop().toLowerCase()] ?? (one.type || 'text/plain'), size: one.size };
  if (pasted) return { body: pasted, type: 'text/html; charset=utf-8', size: pasted.length };
  return listing.value.trim() ? { body: listing.value, type: looksLikeMarkup(listing.value) ? 'text/html; charset=utf-8' : 'text/plain; charset=utf-8', size: listing.value.length } : null;
}

const looksLikeMarkup = text => /^\s*<(?:!doctype|html|head|body|div|script|table|article|section)\b/i.test(text);

function refuse(problem) {
  holder.open = true;
  place.replaceChildren();
  const summary = faultSummary(form, problem);
  holder.before(summary);
  status.textContent = '';
  summary.focus();
}

const nothing = { type: '', title: 'There is nothing to read', status: 0, errors: [{ field: 'listing', found: 'nothing', expected: 'the seller’s page or words', mend: 'paste them, or choose a saved page' }] };
const tooLarge = size => ({ type: '/problems/too-large', title: 'Too large', status: 413, errors: [{ field: 'listing', found: `${(size / (1 << 20)).toFixed(1)} MB`, expected: '4 MB at most', mend: 'select the words on the page and paste those' }] });

async function read() {
  clearFaults(form);
  for (const old of document.querySelectorAll('.faults')) old.remove();
  const query = readQuestion(form);
  history.replaceState(null, '', address('listing.html', Object.fromEntries(query)));
  const sent = documentSent();
  if (!sent || sent.size > most) {
    refuse(sent ? tooLarge(sent.size) : nothing);
    return;
  }

  const own = ++asking;
  place.replaceChildren(el('p', { class: 'waiting' }, 'Reading it …'));
  status.textContent = 'Reading it.';
  try {
    const [answer, { listingAnswer }] = await Promise.all([
      ask(address('/api/listings/read', Object.fromEntries(query)), { method: 'POST', headers: { 'Content-Type': sent.type }, body: sent.body }),
      import('./listing-answer.js'),
    ]);
    if (own !== asking) return;
    const { asked } = answer;
    const needed = asked.position ? `${positionName(shown, asked.position)} of ${variantName(shown, asked.variant)}` : 'no engine named';
    document.title = `${answer.headlineText} – Read a listing – PartMatch`;
    holder.open = false;
    holder.querySelector('summary').replaceChildren(el('strong', null, 'Listing: '), `${answer.title ?? 'pasted words'}, for ${needed}. `, el('span', { class: 'change' }, 'Change'));
    place.replaceChildren(...listingAnswer(answer, shown).flat(Infinity).filter(Boolean));
    status.textContent = `Answer: ${answer.headlineText}.`;
    place.querySelector('[data-first]')?.focus();
  } catch (error) {
    if (own !== asking) return;
    if (!(error instanceof Refusal)) throw error;
    refuse(error.problem);
  }
}

form.addEventListener('submit', event => {
  event.preventDefault();
  read();
});
family.addEventListener('change', () => showFamily(family.value));

const query = new URLSearchParams(location.search);
try {
  await offerFamilies(family, query.get('family'), 'No engine: only say what it is');
  await showFamily(family.value, query);
} catch (error) {
  if (!(error instanceof Refusal)) throw error;
  refuse(error.problem);
}

fillForm(form, query);
if (!place.firstChild) place.append(el('p', { class: 'quiet' }, 'Say what the part is for, paste what the seller wrote: the answer is one of three, buy, ask first, or leave it, with its reasons and the message to the seller.'));
