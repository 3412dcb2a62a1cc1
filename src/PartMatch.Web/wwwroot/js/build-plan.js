// A plan: what it costs and when it is there, what to mind, its lines by group, and behind them what to order and what to have done.

import { fold, foldNarrow } from './fold.js';
import { address, count, el, facts, linked, ruled, section, sentence, sentences, sureness, surenessLegend } from './format.js';
import { codeOf, money } from './offer-words.js';
import { addresses } from './page.js';
import { actionWords, actionMark, lineTable, staysAsItIs } from './build-line.js';
import { basketSections } from './build-baskets.js';

const isNothing = amount => !amount || Number(amount.amount) === 0;

/** The sum, one under the other. */
function costTable(cost) {
  const part = (what, amount, sign = '') => (isNothing(amount) ? null : [what, { cell: `${sign}${money(amount)}`, class: 'count' }]);
  const rows = [
    part('Spent already', cost.spent), part('Ordered and not paid', cost.committed),
    part('Goods', cost.goods), part('Sending', cost.sending), part('Import charges', cost.import), part('Work', cost.work),
    part('Set aside for what nobody inspected', cost.allowances), part('Less what is sold', cost.sales, '− '),
    { class: 'total', cells: ['Together', { cell: money(cost.total), class: 'count' }] },
    cost.cheapest.amount === cost.total.amount ? null : part('Together, where what is measured comes out cheapest', cost.cheapest),
    part('Besides: deposits that come back for old parts', cost.deposits), part('Besides: the donor', cost.donor),
  ].filter(Boolean);
  return ruled('What it costs', ['What', { text: 'Amount', class: 'count' }], rows, { className: 'slim cost' });
}

function tally(lines) {
  const counts = Object.keys(actionWords).map(action => [action, lines.filter(line => line.action === action).length]).filter(([, many]) => many > 0);
  return el('ul', { class: 'tally' }, counts.map(([action, many]) => el('li', null, el('b', null, String(many)), actionMark(action))));
}

/** What the tally counts, so that it can be held against the lines. */
function counted(parts, declared) {
  const bare = parts.filter(line => !line.donorHas && line.action === 'leave-off').length;
  const apart = [declared.length ? `${count(declared.length, 'service')} (what it is used for and fed with)` : '',
    bare ? `${count(bare, 'position')} where nothing is and nothing comes` : ''].filter(Boolean);
  return el('p', { class: 'quiet small' }, `${count(parts.length - bare, 'position')} of the engine.`,
    apart.length ? ` Not counted: ${apart.join(', ')}.` : '');
}

/** Of what no row of the books tells of renewals: the positions, which are many. */
const untold = /^(Not recorded, and not in the sum: .* are opened): (.*)$/;

/** A flag stands whole, but for that list: it is folded, and on paper open. */
function flagText(flag) {
  const [, told, list] = untold.exec(flag) ?? [];
  return list ? [linked(sentences(`${told}.`)), ' ', el('details', { class: 'on-paper' }, el('summary', null, 'Which they are'), el('p', { class: 'small' }, sentences(list)))]
    : linked(sentences(flag));
}

/** What has to be read while the money is still there. */
const beforeMoney = flags => (flags.length ? el('section', { class: 'before-money' }, el('h3', null, 'Before you spend money'),
  el('ul', { class: 'cautions' }, flags.map(flag => el('li', null, flagText(flag))))) : null);

/** A plan that begins with another engine is no plan of the build as it stands. */
function otherDonor({ asked }, build) {
  const offer = build.donors?.find(one => one.code === asked.donor);
  return offer ? el('p', { class: 'notice' }, 'Planned from ', el('strong', null, offer.name), ' instead of the donor that the build has. ',
    el('a', { href: address('donors.html', { build: build.code, objective: asked.objective }) }, 'All its donors')) : null;
}

function headline(plan, { build, query }) {
  const tradeOff = address('build.html', { build: build.code, version: query.get('version'), objective: query.get('objective'), show: 'trade-off' });
  return el('section', { class: 'headline', 'data-status': plan.status },
    el('h2', { 'data-first': true, tabindex: '-1' }, plan.headlineText),
    otherDonor(plan, build),
    plan.gap ? el('p', { class: 'why' }, sentences(plan.gap)) : null,
    plan.cost ? [
      el('p', { class: 'why' }, sentences(plan.cost.text)), beforeMoney(plan.flags),
      facts([
        ['Ordered on', plan.asked.startOn], ['Ready', `${plan.readyOn}, after ${count(plan.days, 'calendar day')}; your own hours at the bench are not counted`],
          ['The weakest line is', plan.sureness ? sureness(plan.sureness) : ''],
        ['Of the build', `version ${plan.asked.version}`], ['Next', el('a', { href: tradeOff }, 'What does each day sooner cost?')],
      ]),
    ] : null);
}

/** Which there are, before the first line; each in full behind the work. */
const cautionsAhead = list => (list.length ? el('p', { class: 'why small' }, el('a', { href: '#cautions' }, `${count(list.length, 'caution')}`),
  ` where this work can hurt someone: ${list.map(one => one.code.replaceAll('-', ' ')).join(', ')}.`) : null);

function cautions(list) {
  const place = section('Cautions', list.length ? el('ul', { class: 'cautions' }, list.map(caution => el('li', null, caution.text))) : null);
  place?.setAttribute('id', 'cautions');
  return place;
}

const names = plan => new Map(plan.lines.map(line => [line.position, line.name]));

function works(plan) {
  const byCode = names(plan);
  const said = texts => texts.map(text => sentence(byCode.get(text) ?? text)).join('; ');
  const undo = { true: 'yes', false: 'no: it stays done' };
  return foldNarrow('Work, in time', count(plan.works.length, 'work'), plan.works.length
    ? ruled('In the order in which it starts', ['Work', 'From', 'To', 'Who', 'Price', 'Can be undone', 'Asked for by', 'Waits for'], plan.works.map(work => [
    work.name, work.startsOn, [work.endsOn, el('div', { class: 'quiet small' }, work.days === undefined ? 'days not recorded' : count(work.days, 'day'))],
    work.who ?? 'not recorded', work.price ? money(work.price) : 'not recorded', undo[work.canBeUndone] ?? 'not known', said(work.because), said(work.waitsFor),
  ]), { className: 'restack' }) : null);
}

function orders(plan) {
  const place = foldNarrow('What to order, by seller', count(plan.baskets.length, 'basket'), basketSections(plan));
  place?.classList.add('orders');
  return place;
}

/** Few stand open; of many the headline has told the number. */
const fewTrusted = 6; // ours, no source: what still is read and not passed over

function trust(plan) {
  const byCode = names(plan);
  if (plan.onTrust.length === 0) return null;
  const table = ruled('What nobody knows and was admitted', ['Position', 'What is not known', 'What that saves'], plan.onTrust.map(one => [
    sentence(byCode.get(one.position) ?? one.position), linked(sentences(one.text)), one.saves ? money(one.saves) : 'there is no plan without it',
  ]), { className: 'restack' });
  return plan.onTrust.length > fewTrusted ? fold('Taken on trust', count(plan.onTrust.length, 'line'), table) : section('Taken on trust', table);
}

/** An offer by its name and its seller's. */
function boughtFrom(plan, offer) {
  const basket = plan.baskets.find(one => one.items.some(item => item.offer === offer));
  return basket ? `${basket.items.find(item => item.offer === offer).name}, from ${basket.name}` : offer;
}

const listOf = texts => (texts.length ? el('ul', null, texts.map(text => el('li', null, linked(sentences(text))))) : null);

/** The nodes of a plan, or of its absence with what conflicts. */
export function planAnswer(plan, shown, conflict) {
  const about = {
    ...shown, parts: plan.lines.flatMap(line => [line.part, ...line.oneOf]), sellers: new Map(plan.baskets.map(basket => [codeOf(basket.seller), basket.name])),
    shared: new Map(plan.baskets.flatMap(basket => basket.items).filter(item => item.for.length > 1).map(item => [item.offer, item.name])),
  };
  const { parts, changed, stays, declared } = staysAsItIs(plan.lines);
  return [
    headline(plan, about), conflict,
    plan.cost ? [tally(parts.filter(line => line.donorHas || line.action !== 'leave-off')), counted(parts, declared), costTable(plan.cost)] : null,
    cautionsAhead(plan.cautions), trust(plan),
    section('Position by position', changed.length ? [
      lineTable('What is done at each position. Sending and work are not in the amount of a line: they stand in the sum above.', changed, about),
        surenessLegend()] : null),
    fold('Stays as it is', count(stays.length, 'position'), stays.length ? lineTable('Positions that keep what they have', stays, about) : null),
    fold('What it is used for and fed with', count(declared.length, 'position'), declared.length
      ? lineTable('Declared: what every part has to suit, nothing to buy', declared, about) : null),
    orders(plan),
    works(plan),
    cautions(plan.cautions),
    fold('Left over', count(plan.leftOver.length, 'part'), plan.leftOver.length
      ? ruled('What comes with packs and kits and is not used', ['Part', 'Pieces', 'From'], plan.leftOver.map(one =>
      [linked(`${one.part} ${one.name}`), String(one.pieces), boughtFrom(plan, one.from)]), { className: 'restack slim' }) : null),
    fold('Offers that were not weighed', '', listOf(plan.notWeighed)),
    addresses(plan),
  ];
}
