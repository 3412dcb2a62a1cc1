// The ranking of donors: a table to compare by, and a sheet for each with what to look at before paying.

import { variantName } from './choices.js';
import { fold } from './fold.js';
import { address, count, el, facts, linked, pageOf, partLink, ruled, sentence, sentences, sureness } from './format.js';
import { money } from './offer-words.js';
import { addresses } from './page.js';
import { checkList } from './yard-checks.js';

/** What stands there while it is worked out; `stop` ends it with what is found. */
export function waiting(stop) {
  const far = el('span', null, 'Working it out …');
  const button = el('button', { type: 'button', class: 'plain', onclick: () => { button.disabled = true; far.textContent = 'Stopping …'; stop(); } },
    'Stop, and show what is found');
  const text = ({ name, number, of, looked, toLook }) => `Donor ${number} of ${of}, ${name}: ${
    toLook === undefined ? 'looking for its plan' : `what each part costs if it is bad, ${looked + 1} of ${toLook}`}.`;
  return {
    node: el('div', { class: 'solving' }, el('p', { class: 'waiting' }, far), el('p', { class: 'buttons' }, button)),
    told: progress => { if (!button.disabled) far.textContent = text(progress); },
  };
}

const levels = { 'bare': 'bare block', 'short': 'short engine', 'long': 'long engine', 'complete': 'complete', 'heard-running': 'complete, heard running' };

const engine = donor => [donor.variantName, donor.built && `built ${donor.built}`, donor.serial !== undefined && `serial ${donor.serial}`, levels[donor.level]]
  .filter(Boolean).join(', ');

const placeOf = donor => el('span', { class: 'placed' }, donor.rank === undefined ? '–' : `${donor.rank}`);

const whole = text => el('span', { class: 'whole' }, text);

const heads = ['Place and donor', { text: 'To finish', class: 'count' }, { text: 'With price and freight', class: 'count' }, 'Ready', 'Weakest line',
  { text: 'Unknowns', class: 'count' }, { text: 'Stay', class: 'count' }];

function row(donor) {
  return {
    'data-donor': donor.donor, class: donor.isPresent ? 'present' : null,
    cells: [
      [placeOf(donor), ' ', el('a', { href: `#donor-${donor.donor}` }, donor.name), donor.isPresent ? ' (the donor of the build)' : '', el('div', { class: 'quiet small plain-name' }, engine(donor))],
      { cell: donor.toFinish ? money(donor.toFinish) : 'no plan', class: 'count' },
      { cell: donor.whole ? el('strong', null, money(donor.whole)) : donor.toFinish ? 'not known' : '–', class: 'count' },
      donor.readyOn ? [whole(donor.readyOn), el('div', { class: 'quiet small' }, count(donor.days, 'day'))] : '–',
      donor.sureness ? sureness(donor.sureness) : '–',
      { cell: donor.unknowns === undefined ? '–' : String(donor.unknowns), class: 'count' },
        { cell: donor.kept === undefined ? '–' : String(donor.kept), class: 'count' },
    ],
  };
}

/** Is it the engine that it is said to be? */
const identity = (look, family) => checkList(look.identity, codes => `else it is ${codes.map(code => variantName(family, code)).join(' or ')}`);

const access = part => (part.accessMinutes === undefined ? 'not recorded' : part.accessMinutes === 0 ? part.access ?? 'from outside' : `${part.access ?? ''} (${part.accessMinutes} min)`);

function parts(look) {
  const rows = look.parts.map(part => [
    [sentence(part.name), el('div', { class: 'quiet small' }, part.parts.map((id, index) => [index ? ' or ' : '', partLink(id)]), part.pieces > 1 ? ` × ${part.pieces}` : '')],
    { cell: part.ifBad ? money(part.ifBad) : el('span', { class: 'never' }, /no plan/.test(part.text) ? 'no plan without it' : 'not known'), class: 'count' },
    access(part), part.limits.length ? part.limits.map(limit => el('div', { class: 'small' }, limit)) : el('span', { class: 'quiet' }, 'nothing recorded'),
  ]);
  return rows.length ? ruled('Kept, and nobody has looked at it: what hurts most first',
    ['Part', { text: 'If it is bad', class: 'count' }, 'To see it', 'It may measure'], rows,
    { className: 'restack looks' }) : el('p', null, 'Every part that the plan keeps has been inspected.');
}

function before(donor, family) {
  const { look } = donor;
  if (!look) return null;
  return [
    el('h3', null, 'Before you pay'),
    el('p', null, look.identityText), identity(look, family),
    el('p', { class: 'small' }, el('a', { href: pageOf(look.tellApart) }, 'The whole key of the family, step by step')),
    donor.toFinish ? parts(look) : null,
  ];
}

function noPlan(donor) {
  return donor.noPlan.length === 0 ? null : [el('h3', null, 'Why there is no plan'),
    el('ul', null, donor.noPlan.map(one => el('li', null, linked(sentences(one.text)), ' ', el('span', { class: 'quiet' }, `To mend: ${one.mend}.`))))];
}

function sheet(donor, { build, family, take }) {
  const offer = build.donors?.find(one => one.code === donor.donor);
  const button = offer && !donor.isPresent ? el('button', { type: 'button', class: 'plain',
    onclick: () => { button.disabled = true; take(offer).finally(() => { button.disabled = false; }); } },
    'Take this one', el('span', { class: 'unseen' }, ` (${donor.name})`)) : null;
  const node = fold(el('h2', null, donor.name), donor.headlineText,
    el('p', null, sentences(donor.costText), ' ', donor.rankText),
    facts([['Engine', engine(donor)], ['Price', donor.price ? money(donor.price) : 'not known'],
      ['To fetch it', donor.freight ? money(donor.freight) : 'not known'],
      ['Worth', donor.worthUpTo ? `up to ${money(donor.worthUpTo)} for engine and freight, no other on the list comes cheaper` : '']]),
    donor.flags.length ? el('ul', { class: 'flags' }, donor.flags.map(flag => el('li', null, linked(sentences(flag))))) : null,
    noPlan(donor), before(donor, family),
    el('p', { class: 'buttons' }, button, donor.toFinish ? el('a',
      { href: address('build.html', { build: build.code, objective: new URLSearchParams(donor.plan.split('?')[1]).get('objective'),
      donor: offer && !donor.isPresent ? donor.donor : null }) }, 'The plan that begins with it') : null));
  node.id = `donor-${donor.donor}`;
  node.classList.add('donor-sheet');
  return node;
}

/** The nodes of the answer. */
export function donorsAnswer(answer, about) {
  return [
    el('section', { class: 'headline' }, el('h2', { 'data-first': true, tabindex: '-1' }, answer.headlineText),
      el('p', { class: 'why' }, `Planned from version ${answer.asked.version} of `,
        el('a', { href: address('build.html', { build: about.build.code }) }, about.build.title),
        `, ordered on ${answer.asked.startOn}.`)),
    ruled('Each with the plan that begins with it', heads, answer.donors.map(row), { className: 'restack donors' }),
    el('p', { class: 'quiet small' }, 'To finish: everything from the engine at the bench on. Unknowns: parts that stay and nobody has inspected, and what is taken on trust. ',
      'Stay: positions where the donor’s own stays.'),
    el('section', null, el('h2', null, 'At the yard'), el('ul', { class: 'cautions' }, answer.cautions.map(caution => el('li', null, caution.text)))),
    answer.donors.map(donor => sheet(donor, about)),
    addresses(answer),
  ];
}
