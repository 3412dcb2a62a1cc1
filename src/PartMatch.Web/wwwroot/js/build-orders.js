// Buying: what is to be ordered by seller, what was ordered and how far it has come, and the money.

import { ask } from './api.js';
import { actWords, dayField, field, printButton, read, sheetHead, showFor, stateWords, teller, tellerFold, tell } from './build-bench.js';
import { codeOf, money } from './offer-words.js';
import { today } from './editor.js';
import { foldNarrow } from './fold.js';
import { address, count, el, partLink, sentence } from './format.js';

const acts = ['paid', 'arrived', 'wrong', 'returned', 'refunded', 'cancelled', 'deposit-back', 'deposit-kept', 'charged'];

/** Which fields an act asks for; day and note go with every one. What is right is told under goods in, where its checks stand. */
const asked = {
  line: ['arrived', 'wrong', 'returned', 'cancelled'], pieces: ['arrived', 'wrong', 'returned', 'cancelled'], amount: ['paid', 'returned', 'refunded', 'deposit-back', 'deposit-kept', 'charged'],
  means: ['paid'], fault: ['wrong'], sent: ['wrong'],
};

/** A payment that is not what is owed says what it means: nothing is settled by a slip. */
const meanings = [['', 'all that is owed'], ['inPart', 'a part of it: more is to be paid'], ['settles', 'less than was agreed, and that settles it'],
  ['aboveAgreed', 'more than was agreed']];

/** How far the pieces of a line have come; the state is in words, not in colour. */
function lineItem(line) {
  const { agreed, pieces } = line;
  return el('li', null, el('strong', null, `${sentence(stateWords[line.state])}: `), agreed.name, ' ', partLink(agreed.part), `, ${count(agreed.pieces, 'piece')}, ${agreed.price}`,
    pieces.wrong ? el('div', null, `${count(pieces.wrong, 'piece')} wrong. ${line.returnText ?? ''}`) : null,
    line.cameWrong.map(one => el('div', { class: 'small' }, `Came on ${one.on}: ${one.sent ? ['instead ', one.sent].join('') : one.fault.replaceAll('-', ' ')}${one.note ? ` – ${one.note}` : ''}`)));
}

function tellForm(order, send) {
  const form = el('form', { class: 'asking', novalidate: true },
    field('What happened', el('select', { name: 'act' }, acts.map(act => el('option', { value: act }, actWords[act])))),
    field('Which line', el('select', { name: 'line' }, el('option', { value: '' }, 'all of it'), order.lines.map(line => el('option', { value: line.line }, `${line.line}: ${line.agreed.name}`)))),
    field('Pieces, all when left out', el('input', { name: 'pieces', inputmode: 'numeric', autocomplete: 'off' })),
    field(`Amount in ${order.terms.currency}`, el('input', { name: 'amount', inputmode: 'decimal', autocomplete: 'off' })),
    field(`That is (${money(order.money.owed)} owed)`, el('select', { name: 'means' }, meanings.map(([value, text]) => el('option', { value }, text)))),
    field('What is wrong', el('select', { name: 'fault' }, el('option', { value: '' }, 'nothing'), el('option', { value: 'other-part' }, 'another part came'),
      el('option', { value: 'beyond-limits' }, 'worn beyond a limit'), el('option', { value: 'damaged' }, 'damaged'))),
    field('What came instead', el('input', { name: 'sent', autocomplete: 'off' })),
    field('On', dayField()), field('Note', el('input', { name: 'note', autocomplete: 'off', maxlength: 2000 })),
    el('p', { class: 'buttons' }, el('button', null, 'Tell it')));
  const show = () => showFor(form, form.elements.act.value, asked);
  form.elements.act.addEventListener('change', show);
  show();
  form.addEventListener('submit', event => {
    event.preventDefault();
    const { means, ...did } = read(form, ['line', 'pieces']);
    send(means ? { ...did, [means]: true } : did);
  });
  return el('details', { class: 'tell' }, el('summary', null, 'Tell what happened'), form);
}

const goodsIn = build => address('build.html', { build, show: 'goods-in' });

function orderSection(order, { api, again, by }) {
  const place = el('section', { class: 'bench-part' });
  const send = body => tell(place, `${api}/${order.number}`, { body, version: order.version, by, again });
  const quick = (text, act) => el('button', { type: 'button', onclick: () => send({ act, on: today() }) }, text);
  const isOnTheWay = order.lines.some(line => line.pieces.onTheWay > 0);
  const title = el('h3', null, `Order ${order.number}${order.terms.seller ? ` – ${codeOf(order.terms.seller)}` : ''}, ${order.terms.orderedOn}${order.terms.reference ? ` (${order.terms.reference})` : ''}`);
  const content = [
    el('ul', null, order.lines.map(lineItem)),
    el('p', null, `Spent ${money(order.money.spent)}, still to pay ${money(order.money.committed)}${Number(order.money.depositsOwed.amount) ? `; ${money(order.money.depositsOwed)} deposit comes back for old parts` : ''}.`),
    order.terms.expectedOn && isOnTheWay ? el('p', null, `Should be there on ${order.terms.expectedOn}.`) : null,
    !order.lines.some(line => line.pieces.arrived > 0) ? null : el('p', null, 'Not everything of it was looked at: ', el('a', { href: goodsIn(order.build) }, 'goods in'), '.'),
    el('div', { class: 'actions' }, order.money.isSettled ? null : quick('Paid, all of it', 'paid'), isOnTheWay ? quick('Arrived, all of it', 'arrived') : null),
    tellForm(order, send),
    el('details', { class: 'tell' }, el('summary', null, `${count(order.events.length, 'event')}`),
      el('ol', null, order.events.map(one => el('li', null, one.isWithdrawn ? el('s', null, eventText(one)) : eventText(one),
        one.isWithdrawn || ['ordered', 'withdrawn'].includes(one.did.act) ? null
          : [' ', el('button', { type: 'button', class: 'plain', onclick: () => send({ act: 'withdrawn', on: today(), withdraws: one.event }) }, 'told by mistake')]))))].filter(Boolean);
  if (asksForNothing(order)) {
    place.classList.add('done');
    place.append(foldNarrow(title, `done: ${count(order.lines.length, 'line')}`, content));
  } else place.append(title, ...content);
  return place;
}

/** Everything of it is paid, and is right, gone back or cancelled. */
const asksForNothing = order => order.money.isSettled && order.lines.every(line => ['checked', 'returned', 'refunded', 'cancelled'].includes(line.state));

const eventText = one => [one.did.on, actWords[one.did.act], one.did.line ? `line ${one.did.line}` : '', one.did.amount ?? '', one.did.sent ?? '', one.did.withdraws ? `event ${one.did.withdraws}` : '',
  one.did.inPart ? 'a part' : '', one.did.settles ? 'that settles it' : '', one.did.aboveAgreed ? 'more than was agreed' : '', one.did.withoutCheck ? 'without a check' : '',
  one.did.note ?? '', one.who ? `(${one.who})` : ''].filter(Boolean).join(', ');

/** What makes a mistake dear is loud where it is paid for. */
const isDanger = /look-alike|does not go back/;

function basketSection(basket, { api, again, by, version }) {
  const place = el('section', { class: 'bench-part' });
  const form = el('form', { novalidate: true },
    el('ul', { class: 'ticks' }, basket.items.map(item => el('li', null, el('label', null,
      el('input', { type: 'checkbox', name: 'offer', value: item.offer, checked: !item.flags.some(flag => flag.startsWith('measure')) }),
      ` ${item.packs} × ${item.name}${item.piecesInPack > 1 ? `, pack of ${item.piecesInPack}` : ''}, ${item.numberAsWritten ?? item.part}, ${money(item.price)}${item.packs > 1 ? ' each' : ''}`, item.flags.map(flag => el('div', { class: 'small' }, isDanger.test(flag) ? el('strong', null, sentence(flag)) : sentence(flag))))))),
    el('p', { class: 'small' }, `${sentence(basket.sendingText)}. Together ${money(basket.total)}.`),
    el('p', { class: 'buttons' }, el('button', null, 'These are ordered')));
  form.addEventListener('submit', event => {
    event.preventDefault();
    const chosen = new Set(new FormData(form).getAll('offer'));
    const lines = basket.items.filter(item => chosen.has(item.offer)).map(item => ({ offer: item.offer, packs: item.packs, for: item.for }));
    tell(place, api, { body: { seller: basket.seller, orderedOn: today(), lines }, version, by, again });
  });
  place.classList.add('to-order');
  place.append(foldNarrow(el('h3', null, `To order from ${basket.name}`), `${count(basket.items.length, 'thing')}, ${money(basket.total)}`, form));
  return place;
}

/** The sheet; what is to be ordered follows when the plan is worked out. */
export async function benchSheet({ build, query, apiOf, again, signal }) {
  const api = `/api/builds/${encodeURIComponent(build.code)}/orders`;
  const found = await ask(apiOf('orders', query, { plan: 'no' }), { signal });
  const by = teller();
  const about = { api, again, by, version: found.version };
  const sum = el('p', { class: 'bench-money' }, found.money.text);
  const toBuy = el('div', { 'aria-live': 'polite' }, el('p', { class: 'waiting' }, 'Working out what is still to be ordered …'));
  ask(apiOf('plan', query), { signal }).then(plan => {
    if (plan.cost) sum.textContent = `${money(plan.cost.spent)} spent, ${money(plan.cost.committed)} ordered and not paid, ${money(plan.cost.toGo)} to go: ${money(plan.cost.total)} in all.`;
    toBuy.replaceChildren(...[plan.cost ? null : el('p', { class: 'notice' }, plan.headlineText, ' ', el('a', { href: address('build.html', { build: build.code, objective: plan.asked.objective }) }, 'The plan, and what conflicts')), ...plan.baskets.map(one => basketSection(one, about)),
      plan.cost && plan.baskets.length === 0 ? el('p', null, 'Nothing is left to be ordered.') : null,
      ...plan.leftOver.filter(one => one.returnBy).map(one => el('p', null, `Left over: ${count(one.pieces, 'piece')} of ${one.name}, ${one.from}; can go back until ${one.returnBy}.`))].filter(Boolean));
  }, error => {
    if (error.name !== 'AbortError') toBuy.replaceChildren(el('p', { class: 'notice' }, `What is to be ordered is not known: ${error.message}.`));
  });
  const content = [...sheetHead('Buying', sum), el('p', { class: 'buttons acts' }, printButton('Print the shopping list'), ' ', el('a', { href: apiOf('orders.csv', query), download: `${build.code}.orders.csv` }, 'As a table for a spreadsheet')),
    tellerFold(by), toBuy,
    el('h2', null, 'Ordered'), found.orders.length ? found.orders.toReversed().map(one => orderSection(one, about)) : el('p', { class: 'quiet' }, 'Nothing has been ordered yet.')];
  return { content, said: found.money.text };
}
