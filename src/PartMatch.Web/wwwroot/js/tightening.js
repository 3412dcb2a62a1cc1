// How a fastener is tightened by the records, and what a torque does to the bolt, dry and oiled.

import { familyShower, offerFamilies, offerVariants, variantName } from './choices.js';
import { fold, foldNarrow } from './fold.js';
import { address, count, el, facts, partLink, plain, ruled, section, sentence, sourceText, sourced, spanText, svg } from './format.js';
import { addresses, bind, choose, drawStrip } from './page.js';
import { plotFigures, titles } from './plot.js';
import { askedFor, printed } from './sums.js';

const form = document.querySelector('form[data-question]');
const { family, variant, position } = form.elements;
let shown = null;

drawStrip();

/** Fasteners first: of the others a record is shown and nothing is reckoned. */
function offerFasteners(value) {
  const option = one => el('option', { value: one.position }, one.name);
  const isFastener = one => one.role === 'fastener';
  const all = shown?.positions ?? [];
  position.replaceChildren(
    el('option', { value: '' }, 'Choose a fastener'),
    ...[['Fasteners', all.filter(isFastener)], ['No fasteners: a record is shown, nothing reckoned', all.filter(one => !isFastener(one))]]
      .filter(([, some]) => some.length > 0).map(([label, some]) => el('optgroup', { label }, some.map(option))));
  choose(position, value);
}

const ofFamily = familyShower();
const showFamily = code => ofFamily(code, found => {
  shown = found;
  offerVariants(variant, shown, '');
  offerFasteners('');
});

form.addEventListener('change', event => {
  if (event.target === family) showFamily(family.value);
});

const threads = {
  'dry': 'Dry, not plated', 'oiled': 'Oiled', 'zinc-plated': 'Zinc-plated', 'cadmium-plated': 'Cadmium-plated', 'other': 'Something else, see the note',
  'not-recorded': 'Not recorded', 'given': 'Nut factor as typed',
};
const singleUse = { no: 'used again', yes: 'renewed every time, for its lock or seal', stretch: 'renewed every time: it is stretched for good' };

const widest = 1.5;

/** Low to high as a bar, expected as a stroke, the proof load as a bracket, on a scale that ends at 150 % of it; beyond it an arrow. */
function shareScale(share) {
  const x = of => 95 * Math.min(of, widest) / widest;
  return svg('svg', { viewBox: '0 0 100 18', class: 'scale', 'aria-hidden': 'true', focusable: 'false' },
    svg('rect', { x: 0, y: 3, width: x(1), height: 12, class: 'band' }), svg('path', { d: `M${x(1) - 3} 3 H${x(1)} V15 H${x(1) - 3}`, class: 'outline' }),
    share.low > widest ? null : svg('rect', { x: x(share.low), y: 6, width: Math.max(1, x(share.high) - x(share.low)), height: 6, class: 'solid' }),
    share.expected > widest ? null : svg('path', { d: `M${x(share.expected)} 3 V15`, class: 'outline' }),
    share.high > widest ? svg('path', { d: 'M92 4 L99 9 L92 14', class: 'outline' }) : null);
}

const spread = text => el('span', { class: 'spread' }, text);

function conditionRow(one) {
  return [
    [threads[one.threads], el('div', { class: 'quiet small' }, one.isTold ? 'as told' : 'to compare')],
    [one.nutFactor.text, el('div', { class: 'quiet small' }, one.nutFactorSource)],
    spread(one.preload.text), [spread(one.shareOfProof.text), shareScale(one.shareOfProof)], spread(one.shareWithTorsion.text), spread(one.shareOfUltimate.text),
  ];
}

const flags = warnings => (warnings.length ? el('div', { class: 'notice' }, el('ul', null, warnings.map(warning => el('li', null, sentence(warning.text))))) : null);

function working(steps) {
  return el('ol', { class: 'working' }, steps.map(step => el('li', null,
    el('div', null, el('strong', null, sentence(step.what)), ' = ', step.formula), el('div', { class: 'number' }, `= ${step.with}`), el('div', { class: 'number result' }, `= ${step.result}`), el('div', { class: 'quiet small' }, step.source))));
}

const mostOf = influences => (influences.length ? `Most of the spread comes from ${influences.slice(0, 2).map(one => one.text).join('; then ')} of the proof load.` : null);

function judged(one, of) {
  return [
    ruled(`What ${one.torque.text} does${of}: low … expected … high`, ['Threads', 'Nut factor', 'Preload', 'Of the proof load', 'Of the proof stress, twisted while it is tightened', 'Of the least breaking load'], one.conditions.map(conditionRow), { className: 'restack' }),
    mostOf(one.influences) ? el('p', { class: 'quiet small' }, mostOf(one.influences)) : null,
    flags(one.warnings),
  ];
}

function record(one, book, index) {
  const of = ` by record ${index + 1}`;
  return foldNarrow(el('h3', null, `Record ${index + 1}`), sourceText(one.evidence),
    el('p', null, sourced(book, one.evidence)),
    facts([['Engines', spanText(one) || null], ['Threads', one.lubrication ? threads[one.lubrication] : 'not recorded'], ['Once undone', one.singleUse ? singleUse[one.singleUse] : 'not recorded whether it may be used again']]),
    ruled(`Passes${of}`, ['Pass', 'Torque or angle', 'In which order', 'Note'], one.passes.map(pass => [String(pass.pass), pass.text, pass.sequence ?? '', pass.note ?? '']), { className: 'restack' }),
    one.notJudged ? el('div', { class: 'notice' }, el('p', null, one.notJudged.reason)) : null,
    one.judged ? [judged(one.judged, of), el('details', { class: 'sums on-paper' }, el('summary', null, 'Its sums', el('span', { class: 'unseen' }, of)), working(one.judged.working))] : null);
}

/** A record in a line, for the first screen; it stands whole below. */
function inShort({ passes, lubrication, singleUse: used, evidence, judged: does, notJudged, ...one }) {
  const told = does?.conditions.find(condition => condition.isTold);
  return el('div', null, `${spanText(one) ? `${spanText(one)}: ` : ''}${passes.map(pass => pass.text).join(', then ')}; threads: ${lubrication ? threads[lubrication].toLowerCase() : 'not recorded'}; once undone: ${used ? singleUse[used] : 'not recorded'}`,
    told ? `; ${told.text}` : notJudged ? `. ${sentence(notJudged.reason)}` : '',
    el('span', { class: 'quiet' }, ` – ${sourceText(evidence)}`));
}

function headingOf(answer) {
  const [told] = answer.torque?.conditions ?? [];
  if (told) return `${answer.torque.torque.text}${told.breaks ? ': ' : ' pulls '}${told.text.replace(/^[^:]*: /, '').replace(/; twisted.*$/, '')}`;
  const name = answer.fastener.name;
  return answer.records.length === 0 ? `Nobody has recorded how this is tightened: ${name}` : `${name}: ${count(answer.records.length, 'record')} of tightening`;
}

function render(answer) {
  const { asked, bolt, fastener } = answer;
  const place = fastener ? `${fastener.name}, ${variantName(shown, asked.variant)}` : null;
  const heading = headingOf(answer);
  const records = answer.records.map((one, index) => record(one, asked.family, index));
  return {
    title: [place ?? bolt.thread, answer.torque?.torque.text].filter(Boolean).join(', '),
    summary: `${[place, bolt ? `${bolt.thread}${bolt.class ? `, class ${bolt.class}` : ''}` : null, answer.torque?.torque.text].filter(Boolean).join(', ')}${askedFor(form, ['family', 'variant', 'position', 'thread', 'class', 'torque'])}.`,
    said: `${heading}.`,
    content: [
      el('section', { class: 'headline' },
        el('h2', { 'data-first': true, tabindex: '-1' }, heading),
        el('p', { class: 'why' }, 'A torque is judged, never proposed: the maker’s document for this fastener, thread and lubrication comes first. Nothing is said of the thread that it goes into: in aluminium it can strip before the bolt gives.'),
        facts([
          ['Recorded', answer.records.length ? answer.records.map(inShort) : null],
          ['Fitted', fastener?.parts.length ? fastener.parts.map(part => el('div', null, partLink(part.part), ` ${part.name}`)) : null],
          ['Pieces', fastener?.pieces],
          ['Thread', bolt ? `${bolt.thread}, stress area ${bolt.stressArea.text}` : null],
          ['Class', bolt ? bolt.class ?? 'not known: 8.8, 10.9 and 12.9 are all reckoned with' : null],
          ['Proof load', bolt?.proofLoad.text], ['Least breaking load', bolt?.ultimateLoad.text],
        ])),
      answer.notJudged ? el('div', { class: 'notice' }, el('p', null, answer.notJudged.reason)) : null,
      flags(answer.warnings.filter(warning => warning.code === 'sources-disagree')),
      answer.torque ? section('The torque asked about', judged(answer.torque, '')) : null,
      section('Cautions', el('ul', { class: 'cautions' }, answer.cautions.map(caution => el('li', null, caution.text)))),
      fastener ? section('How it is recorded', records.length ? records : el('p', null, 'No torque is recorded for this place. ',
        el('a', { href: address('record.html', { book: asked.family, table: 'torques' }) }, 'Record one'), '.')) : null,
      section('What these sums say nothing about', el('ul', null, answer.saysNothing.map(text => el('li', null, text)))),
      foldNarrow('Drawn', titles(answer.plots), plotFigures(answer.plots)),
      fold('What was assumed', count(answer.assumed.length, 'figure'), answer.assumed.length && bolt ? ruled('Assumed figures and where they come from', ['Figure', 'Low … expected … high', 'Source'],
        answer.assumed.map(one => [sentence(plain(one.name)), one.range.text, one.source]), { className: 'restack' }) : null),
      fold('The working', count(answer.working.length, 'step'), answer.working.length ? working(answer.working) : null),
      addresses(answer),
      printed(),
    ],
  };
}

bind({
  prepare: async query => {
    await showFamily(await offerFamilies(family, query.get('family')));
  },
  toApi: (query, byHand) => {
    const question = new URLSearchParams(query);
    if (!question.get('position')) for (const name of ['family', 'variant', 'part']) question.delete(name);
    const waits = question.get('position') && !question.get('variant') && !byHand; // a part's sheet leads here without an engine
    return !waits && ['position', 'torque', 'thread'].some(name => question.get(name)) ? `/api/tightening?${question}` : null;
  },
  render,
  empty: () => el('p', { class: 'quiet' }, 'Choose a fastener to see how it is recorded, or type a thread and a torque.'),
});
