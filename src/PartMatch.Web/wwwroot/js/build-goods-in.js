// Goods in: each thing that came, how it is told apart from what can be taken for it, what to read on it, and what was found.

import { ask } from './api.js';
import { dayField, field, printButton, read, sheetHead, stateWords, teller, tellerFold, tell } from './build-bench.js';
import { today } from './editor.js';
import { fold, foldNarrow } from './fold.js';
import { address, count, el, partLink, sentence, sentences } from './format.js';
import { codeOf } from './offer-words.js';
import { checkWords, plainValue } from './tell-apart-key.js';

/** All that must come out so if it is the right one: ticked with a finger, or with a pencil on paper. */
function ticks(key) {
  if (!key || key.confirm.length === 0) {
    return el('p', null, key && key.candidates.length > 1 ? 'No recorded check separates it from what can be taken for it: ask the seller, and measure what the engine needs of it.'
      : 'Nothing recorded can be taken for it. Hold the number against the order all the same.');
  }
  return [el('p', null, el('strong', null, 'It is the right one only if all of these come out so:')),
    el('ul', { class: 'ticks' }, key.confirm.map(one => el('li', null, el('label', null, el('input', { type: 'checkbox', name: 'seen', value: `${one.check.feature}@${one.check.method}:${one.expect}` }),
      ' ', el('strong', null, `${sentence(one.check.name)}: ${plainValue(one.expect)}`), `, ${checkWords(one.check)}`,
      one.check.how ? el('div', { class: 'small' }, sentences(one.check.how)) : null,
      el('div', { class: 'small' }, 'else it may be ', one.rulesOut.map((part, index) => [index ? ', ' : '', part.replace(/^[^:]*:/, '')]))))))];
}

const isMistaken = inside => inside.key?.candidates.length > 1;

/** What is in a kit or an assembly came unseen: its own checks, and what nothing is recorded to be taken for. */
function insides(arrival) {
  if (arrival.inside.length === 0) return null;
  const [mistaken, others] = [arrival.inside.filter(isMistaken), arrival.inside.filter(one => !isMistaken(one))];
  return [el('h4', null, 'What is in it'),
    el('p', null, `The books say that ${count(arrival.inside.length, 'part')} should be in it. Each may be another than it should be, and what is put together shows less: look before it is opened or mounted, as far as it can be seen.`),
    mistaken.map(one => el('div', { class: 'inside' }, el('p', null, el('strong', null, sentence(one.name)), ' ', partLink(one.part, one.number), one.pieces ? `, ${count(one.pieces, 'piece')}` : '',
      one.isCertain ? '' : ', not surely in it', '.'), ticks(one.key))),
    others.length ? el('p', null, 'Nothing recorded can be taken for: ', others.map((one, index) => [index ? ', ' : '', one.name, ' ', partLink(one.part, one.number)]), '.') : null];
}

function measures(arrival) {
  return arrival.measure.length === 0 ? null : fold(el('h4', null, 'To read on it'), 'kept for this example', arrival.measure.map(limit => el('div', { class: 'cell' },
    el('label', null, `${sentence(limit.name)}, limit ${limit.limit.text}`, el('input', { class: 'read', 'data-feature': limit.feature, autocomplete: 'off', placeholder: '26.10 mm' })),
    el('label', null, '± how well it was read', el('input', { class: 'read', 'data-uncertainty': limit.feature, autocomplete: 'off' })))));
}

const readingsOf = place => [...place.querySelectorAll('[data-feature]')].filter(input => input.value.trim()).map(input => {
  const uncertainty = place.querySelector(`[data-uncertainty="${input.dataset.feature}"]`).value.trim();
  return { feature: input.dataset.feature, value: input.value.trim(), ...(uncertainty ? { uncertainty } : {}) };
});

/** Before it is looked at it has come: that is told by itself, and brings it to the head of the sheet. */
const cameButton = (place, arrival, { orders, again, by }) => el('div', { class: 'actions' }, el('button', {
  type: 'button', onclick: () => tell(place, `${orders}/${arrival.order}`, { body: { act: 'arrived', on: today(), line: arrival.line }, version: arrival.version, by, again }),
}, 'It has come'));

/** Right is what was looked at: a check that came out so, or that none was made, said aloud. */
function rightForm(place, arrival, send) {
  const without = el('input', { type: 'checkbox', name: 'withoutCheck' });
  const form = el('form', { class: 'right', novalidate: true },
    el('p', null, el('label', null, without, ' Looked at without a check: only the number was held against the order')),
    el('div', { class: 'actions' }, el('button', null, 'It is right')));
  form.addEventListener('submit', event => {
    event.preventDefault();
    const seen = [...place.querySelectorAll('input[name="seen"]:checked')].map(one => one.value);
    send({ isRight: true, ...(seen.length ? { seen } : {}), ...(without.checked ? { withoutCheck: true } : {}) });
  });
  return form;
}

/** What is wrong goes back from here; the money that comes back is told where the money is. */
function returnForm(place, arrival, { orders, buying, again, by }) {
  const form = el('form', { class: 'asking', novalidate: true },
    field('What sending it cost, if you paid it', el('input', { name: 'amount', inputmode: 'decimal', autocomplete: 'off' })),
    field('On', dayField()), field('Note', el('input', { name: 'note', autocomplete: 'off', maxlength: 2000 })),
    el('p', { class: 'buttons' }, el('button', null, 'It is sent back')));
  form.addEventListener('submit', event => {
    event.preventDefault();
    tell(place, `${orders}/${arrival.order}`, { body: { act: 'returned', line: arrival.line, ...read(form) }, version: arrival.version, by, again });
  });
  return el('details', { class: 'tell' }, el('summary', null, 'Send it back'), form,
    el('p', { class: 'small' }, 'Once the money is there, tell it under ', el('a', { href: buying }, `Buying, order ${arrival.order}`), ': “money came back”.'));
}

function foundForm(place, arrival, about) {
  const { api, again, by } = about;
  const send = found => tell(place, api, { body: { order: arrival.order, line: arrival.line, ...found, readings: readingsOf(place) }, version: arrival.version, by, again });
  const others = (arrival.key?.candidates ?? []).map(one => one.candidate).filter(part => part !== arrival.part);
  const form = el('form', { class: 'asking', novalidate: true },
    field('What is wrong', el('select', { name: 'fault' }, el('option', { value: 'other-part' }, 'another part came'), el('option', { value: 'beyond-limits' }, 'worn beyond a limit'), el('option', { value: 'damaged' }, 'damaged'))),
    field('What came instead', el('input', { name: 'sent', autocomplete: 'off', list: `instead-${arrival.order}-${arrival.line}` })),
    el('datalist', { id: `instead-${arrival.order}-${arrival.line}` }, others.map(part => el('option', { value: part }))),
    field('Pieces, all when left out', el('input', { name: 'pieces', inputmode: 'numeric', autocomplete: 'off' })),
    field('On', dayField()), field('Note', el('input', { name: 'note', autocomplete: 'off', maxlength: 2000 })),
    el('p', { class: 'buttons' }, el('button', null, 'Tell that it is wrong')));
  form.addEventListener('submit', event => {
    event.preventDefault();
    send({ isRight: false, ...read(form, ['pieces']) });
  });
  return [arrival.state === 'ordered' ? cameButton(place, arrival, about) : rightForm(place, arrival, send),
    el('details', { class: 'tell' }, el('summary', null, 'Something is wrong'), form)];
}

function arrivalSection(arrival, about) {
  const place = el('section', { class: 'bench-part' });
  const isWrong = arrival.state === 'wrong';
  const isFolded = arrival.state === 'ordered';
  const title = el('h3', null, arrival.name, ' ', isFolded ? el('span', { class: 'number' }, arrival.number ?? arrival.part) : partLink(arrival.part, arrival.number));
  const content = [
    isFolded ? el('p', { class: 'small acts' }, 'The part: ', partLink(arrival.part, arrival.number)) : null, // the whole heading is what is pressed: no link within it
    el('p', null, el('strong', null, `${sentence(stateWords[arrival.state])}. `), `Order ${arrival.order}, line ${arrival.line}${arrival.seller ? `, ${codeOf(arrival.seller)}` : ''}`,
      arrival.arrivedOn ? `, came on ${arrival.arrivedOn}` : arrival.expectedOn ? `, ${arrival.isLate ? 'should have come' : 'should come'} by ${arrival.expectedOn}` : '', '.'),
    arrival.cautions.map(one => el('p', { class: 'caution' }, el('strong', null, 'Caution: '), one.text)),
    isWrong ? [arrival.cameWrong.map(one => el('p', null, `${count(one.pieces, 'piece')}: ${one.sent ? `instead came ${one.sent}` : one.fault.replaceAll('-', ' ')}${one.note ? ` – ${one.note}` : ''}.`)),
      el('p', null, el('strong', null, 'Send it back: '), arrival.returnText ?? ''), returnForm(place, arrival, about)] : null,
    isWrong ? null : ticks(arrival.key),
    isWrong ? null : insides(arrival),
    arrival.key && !isWrong ? el('p', { class: 'small acts' }, el('a', { href: arrival.key.permalink.replace('/api/tell-apart', 'tell-apart.html') }, 'Step by step, which of them it is')) : null,
    isWrong ? null : measures(arrival),
    arrival.items.map(item => el('p', null, sentences(item.text))),
    isWrong ? null : foundForm(place, arrival, about)].flat(Infinity).filter(Boolean);
  // What is on the way is for later: on a phone only its heading stands between what is to be looked at.
  if (isFolded) place.append(foldNarrow(title, arrival.isLate ? 'should have come' : 'on the way', content));
  else place.append(title, ...content);
  return place;
}

export async function benchSheet({ build, query, apiOf, again, signal }) {
  const api = `/api/builds/${encodeURIComponent(build.code)}/goods-in`;
  const orders = `/api/builds/${encodeURIComponent(build.code)}/orders`;
  const buying = address('build.html', { build: build.code, show: 'orders' });
  const found = await ask(apiOf('goods-in', query, { objective: null, version: null }), { signal });
  const by = teller();
  const said = found.arrivals.length ? `${count(found.arrivals.length, 'thing')} to look at, or to come.` : 'Nothing is to come, and everything that came was looked at.';
  return {
    said,
    content: [...sheetHead('Goods in', el('p', null, said)), el('p', { class: 'buttons acts' }, printButton('Print the goods-in sheet')),
      tellerFold(by), found.arrivals.map(one => arrivalSection(one, { api, orders, buying, again, by }))],
  };
}
