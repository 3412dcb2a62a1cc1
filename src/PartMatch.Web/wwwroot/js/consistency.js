// What the base finds wrong or missing in a family, worst first, and what to measure next.

import { familyOf, familyShower, offerFamilies, offerVariants, variantName } from './choices.js';
import { address, count, el, section, sentence } from './format.js';
import { addresses, bind, choose, drawStrip } from './page.js';

const form = document.querySelector('form[data-question]');
const { family, variant, sort } = form.elements;

// Worst first, as the answer orders them: the name of a sort, and what it means.
const sorts = {
  'supersession-loop': ['Numbers that replace each other in a circle', 'None of them is the newest, so “newer number” means nothing along them.'],
  'joint-contradicts': ['Fitted parts that do not mate or add up', 'The maker fitted them together, and by the recorded values they do not go together: a value, a joint or a fitment is wrong.'],
  'companion-contradicts': ['Companion rules that a variant breaks as built', 'The rule is too wide, or what it was held against is wrong.'],
  'fitted-part-contradicts': ['Needs that the fitted part does not meet', 'The maker fitted it, and the recorded need refuses it.'],
  'values-disputed': ['Values on which sources exclude each other', 'Until one gives way the value counts as not known.'],
  'values-contradicted': ['Values that a weaker source contradicts', 'The better source counts; somebody read or heard what cannot be true together with it.'],
  'value-far-off': ['Values far from all others of their kind', 'A slip of the unit, the decimal point or the sign looks like this.'],
  'findings-disagree': ['Findings that disagree', 'Both are shown in the answer; a better or a newer trial settles it.'],
  'torques-disagree': ['Fasteners that sources tighten differently', 'One of them speaks of other engines or other threads, or is wrong.'],
  'spans-overlap': ['Spans that overlap', 'Two parts count as fitted on the same engines. Nothing is wrong where the maker fitted either.'],
  'spans-gap': ['Engines between two spans', 'Of these engines it is not recorded what they have.'],
  'missing-value': ['Values that nobody recorded', 'Something reads them. Those come first on which most questions hang alone.'],
  'not-recorded': ['Positions of which nothing is recorded', 'That nothing is fitted there would be recorded as none.'],
  'no-evidence': ['Statements without a source that counts', 'They cite none, or only one that was retracted.'],
  'near-unjudged': ['Dangerously near numbers that nobody has judged', 'Danger high or medium.'],
  'kind-not-reviewed': ['Kinds whose list of features is not reviewed', 'Answers about them can say no more than that nothing recorded speaks against a part.'],
};

const severities = { wrong: 'cannot all be true', doubtful: 'somebody has to decide', missing: 'missing' };

drawStrip();

const ofFamily = familyShower();
const showFamily = (code, chosen) => ofFamily(code, found => offerVariants(variant, found, chosen, 'The whole family'));

family.addEventListener('change', () => showFamily(family.value, ''));

async function prepare(query) {
  const code = await offerFamilies(family, query.get('family'));
  await showFamily(code, query.get('variant'));
  sort.replaceChildren(el('option', { value: '' }, 'Every sort'), ...Object.entries(sorts).map(([one, [name]]) => el('option', { value: one }, name)));
  choose(sort, query.get('sort'));
}

function tally({ counts, asked }) {
  const found = Object.entries(sorts).filter(([one]) => counts[one] > 0);
  return el('ul', { class: 'tally' }, found.map(([one, [name]]) => el('li', null, el('b', null, counts[one]),
    el('a', { href: address('consistency.html', { family: asked.family, variant: asked.variant, sort: one }), 'aria-current': asked.sort === one ? 'true' : null }, name))));
}

function grouped(answer, place, faultList) {
  return Object.entries(sorts).map(([one, [name, meaning]]) => {
    const own = answer.faults.filter(fault => fault.sort === one);
    return own.length === 0 ? null : section(`${name} (${answer.counts[one]})`,
      el('p', { class: 'quiet' }, `${sentence(severities[own[0].severity])}. ${meaning}`), faultList(own, place, answer));
  });
}

function more({ asked, faults, total }) {
  return faults.length === total ? null : el('p', null, `The first ${faults.length} of ${total} are listed. `,
    el('a', { class: 'button', href: address('consistency.html', { family: asked.family, variant: asked.variant, sort: asked.sort, limit: 1000 }) }, 'List up to 1000'));
}

async function render(answer) {
  const { asked, total } = answer;
  const { faultList, measureNext } = await import('./consistency-faults.js'); // not before there is an answer: the blank form loads without it
  const place = await familyOf(asked.family);
  const about = asked.variant ? variantName(place, asked.variant) : place.title;
  const what = asked.sort ? sorts[asked.sort][0].toLowerCase() : 'everything that can be looked for';
  const heading = total === 0 ? 'Nothing found' : `${count(total, 'fault')} found`;
  return {
    title: about,
    summary: `${about}: ${what}.`,
    said: `${heading}.`,
    content: [
      el('section', { class: 'headline' }, el('h2', { 'data-first': true, tabindex: '-1' }, heading), tally(answer),
        el('p', { class: 'small quiet' }, total === 0 ? 'That is not a proof that nothing is wrong: only what the recorded statements say against each other can be found, and only what something reads is missed.'
          : `Counted over ${asked.variant ? `what concerns ${about}` : `all of ${about}`}, whatever is shown below. What is not listed is not proven right.`),
        asked.sort === 'near-unjudged' ? null : el('p', { class: 'small' }, el('a', { href: address('consistency.html', { family: asked.family, variant: asked.variant, sort: 'near-unjudged' }) }, 'Look for dangerously near numbers as well'))),
      measureNext(answer, place),
      grouped(answer, place, faultList),
      more(answer),
      addresses(answer),
    ],
  };
}

bind({
  prepare,
  toApi: query => (query.size === 0 ? null : `/api/consistency?${query}`),
  render,
  empty: () => el('p', { class: 'quiet' }, 'Choose a family, such as ', el('a', { href: address('consistency.html', { family: 'tern-16' }) }, 'the Tern 16'), ': what its books say against themselves, what nobody has recorded, and which measurement would settle most.'),
});
