// Fills the choices of family, variant, position and group from the base.

import { askOnce, newest } from './api.js';
import { el, plain, sentence } from './format.js';
import { choose } from './page.js';

const option = (value, text) => el('option', { value }, text);

function offer(select, first, options, value) {
  select.replaceChildren(option('', first), ...options);
  choose(select, value);
}

export const families = () => askOnce('/api/families').then(answer => answer.families);

export const familyOf = code => askOnce(`/api/families/${encodeURIComponent(code)}`);

/** Shows families one at a time: `(code, show)` gives the family, or null without a code, to `show`; of two chosen in quick succession only the second. */
export function familyShower() {
  const ofFamily = newest();
  return (code, show) => ofFamily(async () => (code ? familyOf(code) : null), show);
}

/** Offers the families; with only one in the base it is chosen. Gives the chosen code, or ''. */
export async function offerFamilies(select, value, first = 'Choose a family') {
  const all = await families();
  if (all.length === 1 && select.required) select.dataset.standard = all[0].family;
  offer(select, first, all.map(family => option(family.family, [family.makerName, family.title].filter(Boolean).join(' '))), value || select.dataset.standard);
  return select.value;
}

export const variantName = (family, code) => family?.variants.find(variant => variant.variant === code)?.name ?? code;

export const positionName = (family, code) => family?.positions.find(position => position.position === code)?.name ?? plain(code);

export function offerVariants(select, family, value, first = 'Choose a variant') {
  offer(select, first, (family?.variants ?? []).map(variant => option(variant.variant, variant.name)), value);
}

/** Positions under the heads of their groups. */
export function offerPositions(select, family, value, first = 'Choose a position') {
  const groups = (family?.groups ?? []).map(group => el('optgroup', { label: sentence(plain(group)) },
    family.positions.filter(position => position.group === group).map(position => option(position.position, position.name))));
  offer(select, first, groups, value);
}

export function offerGroups(select, family, value) {
  offer(select, 'All groups', (family?.groups ?? []).map(group => option(group, sentence(plain(group)))), value);
}

/** The kinds of part that the family has a position for, by name. */
export function offerKinds(select, family, value) {
  const kinds = [...new Set((family?.positions ?? []).map(position => position.kind))].toSorted();
  offer(select, 'Every kind', kinds.map(kind => option(kind, sentence(plain(kind)))), value);
}
