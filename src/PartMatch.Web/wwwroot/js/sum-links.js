// From a part at its place to the sums that speak of it: the question goes along, as far as it is known.

import { address, el } from './format.js';

const timing = ['valve-timing.html', 'Valve timing', 'when the valves open, and what is trapped'];
const compression = ['compression.html', 'Compression', 'volume by volume, with the squish'];
const sums = {
  'fastener': ['tightening.html', 'Tightening', 'what a torque does to it'],
  'injector': ['injectors.html', 'Injectors and fuel', 'which of them a goal needs'],
  'fuel-pump': ['fuel-supply.html', 'Fuel supply', 'does it deliver enough for a goal'],
  'fuel-regulator': ['fuel-supply.html', 'Fuel supply', 'does the fuel reach the injectors'],
  'intake-camshaft': timing, 'exhaust-camshaft': timing, 'cam-sprocket': timing,
  'head': compression, 'head-gasket': compression, 'piston': compression,
};

// Under which name a sum asks for the part. Injectors are ranked all together, and a wheel may sit on either camshaft: these are left to choose.
const asks = {
  'fastener': 'part', 'fuel-pump': 'pump', 'intake-camshaft': 'intake-cam', 'exhaust-camshaft': 'exhaust-cam', 'head': 'head', 'head-gasket': 'head-gasket', 'piston': 'piston',
};

const roleOf = (family, position) => family?.positions.find(one => one.position === position)?.role;

/** What the sum of a position is called, where there is one. */
export const sumName = (family, position) => sums[roleOf(family, position)]?.[1];

/** The sum that speaks of a position of a family, or null. `part` is given where another than the fitted one is asked about; `text` says it in other words. */
export function sumLink(family, position, { variant, part, text }) {
  const role = roleOf(family, position);
  if (!sums[role]) return null;
  const [page, name, question] = sums[role];
  return el('a', { href: address(page, { family: family.family, variant, position: role === 'fastener' ? position : null, [asks[role]]: asks[role] ? part : null }) }, text ?? `${name}: ${question}`);
}

/** The same with the part of one variant in the other, where the sum can be asked so; a fastener is tightened by the records of its own engine. */
export const swapLink = (family, position, swap) => (asks[roleOf(family, position)] && roleOf(family, position) !== 'fastener' ? sumLink(family, position, swap) : null);
