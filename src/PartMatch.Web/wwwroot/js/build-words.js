// How the sheets of builds speak of a build: its engine, its goal and its wishes, in short.

import { el, plain, sentence } from './format.js';
import { positionName, variantName } from './choices.js';

export const objectives = {
  'cheapest': 'what it costs', 'soonest': 'the day it is ready', 'surest': 'how sure every line is', 'most-kept': 'keeping what the donor has',
};

export const keeps = {
  'either': 'no wish', 'keep': 'keep it', 'keep-if-possible': 'keep it if any plan can', 'renew': 'renew it',
};

export const states = { 'not-inspected': 'there, not inspected', 'good': 'good', 'damaged': 'damaged', 'missing': 'missing' };

const numberOf = part => part.replace(/^[^:]*:/, '');

const signs = number => number.toUpperCase().replace(/[^\p{L}\p{N}]/gu, '');

/** How the seller writes the number, where the books write none of the `parts` so: by it the listing is found. Louder where it is another number. */
export function listedAs(written, parts) {
  const numbers = parts.map(numberOf);
  if (!written || numbers.includes(written)) return null;
  const isAnother = !numbers.some(number => signs(number) === signs(written));
  return el('span', { class: 'listed' }, 'listed as ', el(isAnother ? 'strong' : 'span', { class: 'whole' }, written));
}

const list = (parts, word = 'or') => parts.map(numberOf).join(` ${word} `);

export const placeOf = (wish, family) => (wish.position ? positionName(family, wish.position) : wish.group ? `everything of ${plain(wish.group)}`
  : 'nowhere yet');

/** Is something typed about it in this tab and not saved? */
export const hasDraft = build => sessionStorage.getItem(`partmatch-draft build ${build}`) !== null;

/** A wish in a line. */
export function wishText(wish, family) {
  const said = [
    wish.keep && wish.keep !== 'either' ? keeps[wish.keep] : '',
    wish.like?.length ? `running like ${wish.like.map(code => variantName(family, code)).join(', else ')}` : '',
    wish.parts?.length ? `only ${list(wish.parts)}` : '',
    wish.refuse?.length ? `not ${list(wish.refuse, 'nor')}` : '',
    wish.onlyNew ? 'only new parts' : '',
    wish.admitNotKnown ? 'what nobody knows is taken on trust' : '',
  ].filter(Boolean);
  return `${sentence(placeOf(wish, family))}: ${said.join('; ') || 'nothing asked yet'}`;
}

const goalText = ({ power, speed, boost, fuel } = {}) => [
  power && speed ? `${power} at ${speed}` : power ?? '', boost ? `${boost} of boost` : '', fuel ? plain(fuel) : '',
].filter(Boolean).join(', ');

/** From which engine to which. */
export function engineText(build, family) {
  const donor = variantName(family, build.donor.variant);
  return build.target && build.target !== build.donor.variant ? `${donor} → ${variantName(family, build.target)}` : `${donor}, as it is`;
}

/** What is wanted, in a line. */
export function wantText(build, family) {
  const wishes = build.wishes?.length ?? 0;
  return [
    engineText(build, family), goalText(build.goal), wishes ? `${wishes} ${wishes === 1 ? 'wish' : 'wishes'}` : '',
    build.budget ? `at most ${build.budget} ${build.currency}` : 'no limit of money', build.neededBy ? `by ${build.neededBy}` : '',
  ].filter(Boolean).join('; ');
}
