// Keeps an offer of a listing, with the words it was read from: one click where the seller is known, a name more where nobody has recorded the seller yet.

import { Refusal, askOnce } from './api.js';
import { signature, write } from './editor.js';
import { clearFaults, faultSummary } from './faults.js';
import { address, count, el } from './format.js';

const text = value => (value === undefined || value === null ? '' : String(value));

/** The cells of `offers.csv` that the listing speaks of; what it does not say stays out. */
function cellsOf({ offer }, number) {
  const { terms } = offer;
  const stated = price => price?.money?.amount;
  const told = {
    numberAsWritten: number.written, price: stated(offer.price), currency: offer.price.money.currency, pack: offer.pieces, stock: offer.stock,
    condition: offer.condition === 'not-stated' ? '' : offer.condition, level: offer.level === 'not-stated' ? '' : offer.level,
    shipping: offer.shipping?.rate.money?.currency === offer.price.money.currency ? stated(offer.shipping.rate) : '',
    daysMin: offer.days?.least, daysMax: offer.days?.most, returnable: terms.returnable === 'not-stated' ? '' : terms.returnable, returnsDays: terms.returnDays,
    restocking: terms.restockingPercent, freightBack: terms.freightBack === 'not-stated' ? '' : terms.freightBack,
    coreDeposit: terms.coreDeposit?.money?.currency === offer.price.money.currency ? stated(terms.coreDeposit) : '',
  };
  return Object.fromEntries(Object.entries(told).map(([cell, value]) => [cell, text(value)]).filter(([, value]) => value !== ''));
}

const field = (name, label, attributes = {}) => el('div', { class: 'cell' }, el('label', { for: `keep-${name}` }, label), el('input', { id: `keep-${name}`, name, autocomplete: 'off', ...attributes }));

/** "Bert's Yard" is kept as berts-yard, or as berts-yard-2 where another seller has that code. */
function codeOf(name, taken) {
  const plain = name.normalize('NFKD').toLowerCase().replace(/[^a-z0-9 -]/g, '').trim().replace(/[ -]+/g, '-').replace(/^-|-$/g, '').slice(0, 40).replace(/-$/, '') || 'seller';
  let code = plain;
  for (let count = 2; taken.includes(code); count++) code = `${plain}-${count}`;
  return code;
}

/** The number of an offer that stands for it: one that a book knows, else the first it is said to bear. */
function numberOf(one, answer) {
  const sold = answer.numbers.filter(number => one.numbers.includes(number.numberKey));
  return sold.find(number => number.part) ?? sold[0];
}

/** Only an offer with a plain price and a number can be kept; of the others, null. */
export function keepable(one, answer) {
  return one.offer.price?.money && numberOf(one, answer) ? one : null;
}

/** A form for one offer. It goes into the book of the family that was asked about. */
export function keepForm(one, answer, index) {
  const signed = signature({ why: 'Note' });
  const seller = el('select', { id: 'keep-seller', name: 'seller', 'data-field': 'offer.seller' });
  const fresh = el('div', { class: 'cells', hidden: true }, field('name', 'Name of the seller', { 'data-field': 'newSeller.name newSeller.seller', value: one.offer.seller ?? '' }));
  let known = [];
  const said = el('p', { role: 'status' });
  const form = el('form', { novalidate: true }, el('div', { class: 'cells' }, el('div', { class: 'cell' }, el('label', { for: 'keep-seller' }, 'Who sells it'), seller)), fresh,
    el('div', { class: 'cells' }, field('address', 'Address of the page', { 'data-field': 'listing.address', type: 'url', inputmode: 'url', spellcheck: 'false', value: answer.address ?? '' }), signed.cells), el('div', { class: 'actions' }, el('button', null, 'Keep this offer')), said);
  const showFresh = () => { fresh.hidden = seller.value !== ''; };
  seller.addEventListener('change', showFresh);
  askOnce('/api/sellers').then(({ sellers }) => {
    known = [...new Map(sellers.map(({ terms }) => [terms.code, terms])).values()];
    const named = one.offer.seller?.toLowerCase();
    seller.replaceChildren(el('option', { value: '' }, 'somebody new'), ...known.map(terms => el('option', { value: terms.code, selected: terms.name.toLowerCase() === named }, terms.name)));
    showFresh();
  });
  form.addEventListener('submit', async event => {
    event.preventDefault();
    clearFaults(form);
    for (const summary of form.querySelectorAll('.faults')) summary.remove();
    const name = form.elements.name.value.trim();
    if (!seller.value && !name) {
      const summary = faultSummary(form, { type: '', title: 'Somebody has to sell it', errors: [{ field: 'newSeller.name', found: 'nothing', expected: 'a name', mend: 'write who sells it, as you would call them' }] });
      form.prepend(summary);
      summary.focus();
      return;
    }
    const old = seller.value || known.find(terms => terms.name.toLowerCase() === name.toLowerCase())?.code; // typed again, it is nobody new
    const page = form.elements.address.value.trim();
    const code = old || codeOf(name, known.map(terms => terms.code));
    const body = {
      offer: { ...cellsOf(one, numberOf(one, answer)), seller: code },
      listing: { text: answer.text, ...(answer.title ? { title: answer.title } : {}), ...(page ? { address: page } : {}) },
      ...(old ? {} : { newSeller: { seller: code, name } }),
    };
    try {
      const kept = await write(`/api/offers?book=${encodeURIComponent(answer.asked.family)}`, { body, note: signed.read() });
      const link = el('a', { href: address('offers.html', { offer: kept.offer.offer, book: kept.offer.book }) }, 'Open it');
      form.replaceChildren(el('p', { role: 'status', class: 'notice' }, kept.result === 'already-stored' ? 'This offer is kept already, read from the same words. ' : 'Kept, with the words it was read from. ', kept.earlier ? `${kept.earlier.text ?? ''} ` : '', link));
      form.querySelector('a').focus();
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      if (error.problem.status === 401) signed.askForToken();
      const summary = faultSummary(form, error.problem);
      form.prepend(summary);
      summary.focus();
    }
  });
  return el('details', { class: 'recording' }, el('summary', null, `Keep ${one.name ? `“${one.name}”` : `offer ${index + 1}`}, ${one.offer.price.money.amount} ${one.offer.price.money.currency}`), form);
}

/** The forms under the table: the first few, so that a price list does not become a page of forms. */
export function keepForms(answer) {
  if (!answer.asked.family) return answer.offers.some(one => keepable(one, answer)) ? el('p', { class: 'quiet small' }, 'To keep an offer, say above which engine and position it is for.') : null;
  const most = 5;
  const all = answer.offers.filter(one => keepable(one, answer)).toSorted((a, b) => (a.headline === 'buy' ? 0 : 1) - (b.headline === 'buy' ? 0 : 1));
  if (!all.length) return answer.offers.length ? el('p', { class: 'quiet small' }, 'Nothing of it can be kept: an offer needs one plain price and a number of what is sold.') : null;
  return [...all.slice(0, most).map((one, index) => once(() => keepForm(one, answer, index))), all.length > most ? el('p', { class: 'quiet small' }, `${count(all.length - most, 'more offer')}: a whole list is taken in on the sheet Offers.`) : null];
}

// One form at a time carries the ids: built when it is opened, gone when another is.
function once(make) {
  const whole = make();
  const form = whole.querySelector('form');
  form.remove();
  whole.addEventListener('toggle', () => {
    if (!whole.open) form.remove();
    else {
      for (const other of document.querySelectorAll('details.recording[open]')) if (other !== whole) other.open = false;
      whole.append(form);
    }
  });
  return whole;
}
