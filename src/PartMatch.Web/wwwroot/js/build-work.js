// The plan at the bench: in which order the engine comes apart and goes together, and what is weak while it lies open. Asked for when it is opened.

import { ask } from './api.js';
import { mixUpSections } from './build-mixups.js';
import { faultSummary } from './faults.js';
import { count, el, linked, plain, ruled, section, sentence, sentences, sourced } from './format.js';
import { money } from './offer-words.js';
import { addresses } from './page.js';

const threads = { dry: 'dry', oiled: 'oiled', 'zinc-plated': 'zinc plated', 'cadmium-plated': 'cadmium plated', other: 'as the note says' };
const uses = { no: 'may be used again', yes: 'renewed every time', stretch: 'renewed every time: it is stretched' };

/** How one source tightens it, pass after pass. */
function tightening(book, told) {
  const more = [told.sequence, threads[told.lubrication], uses[told.singleUse], ...told.notes].filter(Boolean);
  return el('div', null, el('strong', null, told.passes.join(', then ')), ` (${told.variant})`, more.length ? `: ${more.join('; ')}. ` : '. ',
    sourced(book, told.evidence));
}

function renewal(book, one) {
  const more = [one.amount, one.bead, one.cureHours ? `cures ${count(one.cureHours, 'hour')}` : '', one.note].filter(Boolean);
  return el('div', null, el('strong', null, one.name), more.length ? `: ${more.join('; ')}. ` : '. ', one.evidence ? sourced(book, one.evidence) : null);
}

/** What a builder asks or minds there. */
const reminder = (book, one) => el('div', null, one.text, one.evidence ? [' ', sourced(book, one.evidence)] : null);

const lines = texts => texts.map(text => el('div', null, text));

const joint = 'Renew, seal, tighten';


function row(step, heads, book) {
  return [
    String(step.number), [el('strong', null, linked(step.text)), step.pieces > 1 ? ` × ${step.pieces}` : '', lines(step.works.map(work => `Work: ${work}.`))],
    linked(sentences(step.because)),
    ...(heads.includes(joint) ? [[step.renewals.map(one => renewal(book, one)), step.tightening.map(told => tightening(book, told)), lines(step.notRecorded)]] : []),
    // The words of each caution stand once, in front of all steps.
    [step.reminders.map(one => reminder(book, one)), step.cautions.length ? el('div', { class: 'quiet small' }, sentence(step.cautions.map(plain).join(', '))) : null],
  ];
}

/** What comes off is neither sealed nor tightened: that column is left out where no step has anything in it. */
function table(caption, steps, book) {
  const heads = [
    'Step', 'What', 'Why', ...(steps.some(step => step.renewals.length + step.tightening.length + step.notRecorded.length > 0) ? [joint] : []), 'Ask, and mind',
  ];
  return steps.length === 0 ? null : ruled(caption, heads, steps.map(step => row(step, heads, book)), { className: `restack work-steps heads-${heads.length}` });
}

function works(order) {
  return order.works.length === 0 ? null : ruled('Away at the shop, measured or curing', ['Work', 'From', 'To', 'Who', 'For'], order.works.map(work =>
    [sentence(work.name), work.startsOn, work.endsOn, work.who ?? 'not recorded', work.because.map(sentence).join('; ')]), { className: 'restack slim' });
}

/** Prints one section of the plan by itself. */
function printAlone(name) {
  document.body.dataset.print = name;
  window.addEventListener('afterprint', () => { delete document.body.dataset.print; }, { once: true });
  window.print();
}

function orderSections(order, book) {
  return [
    el('p', null, order.headlineText),
    el('p', { class: 'buttons acts' }, el('button', { type: 'button', class: 'plain', onclick: () => printAlone('work') }, 'Print the order of work')),
    section('Cautions', order.cautions.length ? el('ul', { class: 'cautions' }, order.cautions.map(caution =>
      el('li', null, el('strong', null, sentence(plain(caution.code))), `: ${caution.text}`))) : null),
    el('p', { class: 'quiet small' }, 'What is asked without a source beside it is the custom of the trade, and complete in nothing: the maker’s document decides.'),
    table('Take apart', order.takeApart, book), works(order), table('Put together', order.putTogether, book),
    table('Fill, once everything is on and cured', order.fill, book),
    section('Before it is started', order.beforeStart.length ? el('ul', null, order.beforeStart.map(one => el('li', null, reminder(book, one)))) : null),
    el('ul', { class: 'quiet small' }, order.saysNothing.map(text => el('li', null, text))),
    addresses(order),
  ];
}

function weakRow(one, book) {
  return [
    [el('strong', null, one.name), el('div', { class: 'quiet small' }, `known of ${one.variant}`)],
    [one.what, one.note ? ` ${sentences(one.note)}` : '', one.evidence ? [' ', sourced(book, one.evidence)] : null],
    one.remedies.map(remedy => el('div', null, linked(sentences(remedy.text)), remedy.inPlan || !remedy.price ? '' : el('strong', null, ` ${money(remedy.price)}`))),
    [one.opened, ' ', one.laterText],
  ];
}

const weakSections = (answer, book) => [
  el('p', null, answer.headlineText),
  answer.weakPoints.length ? ruled('Offered, never forced', ['Where', 'What is weak', 'What mends it', 'Now, or later'], answer.weakPoints.map(one => weakRow(one, book)),
    { className: 'restack weak' }) : null,
  addresses(answer),
];

/** A folded section that asks its question the first time it is opened. */
function later(title, className, question, sections) {
  const place = el('div', { 'aria-live': 'polite' });
  const node = el('details', { class: `fold ${className}` }, el('summary', null, el('h2', null, title)), place);
  node.addEventListener('toggle', async () => {
    if (!node.open || node.dataset.asked) return;
    node.dataset.asked = 'yes';
    place.replaceChildren(el('p', { class: 'waiting' }, 'Working it out …'));
    try {
      place.replaceChildren(...sections(await ask(question)).flat(Infinity).filter(Boolean));
    } catch (error) {
      delete node.dataset.asked;
      if (!error.problem) throw error;
      place.replaceChildren(faultSummary(null, error.problem));
    }
  });
  return node;
}

/** What a plan comes to at the bench. */
export function workSections(apiOf, query, { book, family }) {
  const mixUps = mixUpSections(apiOf, query, { family, print: () => printAlone('mix-ups') });
  return [
    later('What can be taken for what you buy', 'mix-ups', mixUps.question, mixUps.draw),
    later('While it is open', 'weak-points', apiOf('weak-points', query), answer => weakSections(answer, book)),
    later('Order of work', 'work-order', apiOf('work-order', query), order => orderSections(order, book)),
  ];
}
