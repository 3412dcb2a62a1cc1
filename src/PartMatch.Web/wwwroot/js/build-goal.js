// What the engine is to become and to do.

import { at, cell, chosen, group, said, textOf, tick, typed } from './build-fields.js';
import { el } from './format.js';

const fuels = [
  ['', 'not said'], ['petrol-e0', 'petrol without ethanol'], ['petrol-e5', 'petrol, up to 5 % ethanol'], ['petrol-e10', 'petrol, up to 10 % ethanol'],
    ['e85', 'E85'], ['ethanol', 'ethanol'],
  ['methanol', 'methanol'],
];
const supplies = [
  ['', 'as recorded of the variant'], ['return-manifold', 'return rail, regulator hose to the manifold'],
    ['return-ambient', 'return rail, regulator open to the air'],
  ['returnless-fixed', 'no return, fixed pressure in the tank'], ['returnless-controlled', 'no return, controlled pressure'],
];

export function goalFields(build, family) {
  const goal = build.goal ?? {};
  const [title, note] = [typed(build.title), typed(build.note)];
  const target = chosen(build.target ?? '', [['', 'what it is: nothing changes'], ...family.variants.map(one => [one.variant, one.name])]);
  const texts = Object.fromEntries(['power', 'speed', 'boost', 'pressure', 'duty'].map(name => [name, typed(goal[name], { class: 'typed' })]));
  const [fuel, supply] = [chosen(goal.fuel ?? '', fuels), chosen(goal.supply ?? '', supplies)];
  const trust = tick('Take on trust, anywhere, what nobody knows; each such line is marked', build.admitNotKnown);
  const all = { ...texts, fuel, supply };
  return {
    node: group('What it is to become', () => [title.value, target.selectedOptions[0]?.text,
      texts.power.value && `${texts.power.value} at ${texts.speed.value}`, texts.boost.value].filter(Boolean).join('; '),
      el('div', { class: 'cells' },
        cell('What you call it', title), cell('It is to become', target, 'Where nothing else is wished, every part is judged by it.'),
        cell('Power at the crank', texts.power, 'As 180 kW; with the speed it sizes the injectors.'), cell('at the speed', texts.speed, 'As 6800/min.'),
          cell('Boost', texts.boost, 'Over ambient, as 1.1 bar.'),
        cell('Fuel', fuel), cell('Fuel pressure', texts.pressure, 'As 3.0 bar.'), cell('Supply', supply), cell('Duty at most', texts.duty, 'As 85 %.'),
        el('div', { class: 'cell wide' }, trust.node), cell('Note', note, null, { wide: true }))),
    read() {
      const read = said(Object.fromEntries(Object.entries(all).map(([name, control]) => [name, textOf(at(`goal.${name}`, control))])));
      return said({
        title: at('title', title).value.trim(), target: textOf(at('target', target)), note: textOf(at('note', note)), admitNotKnown: trust.input.checked,
          goal: Object.keys(read).length ? read : undefined,
      });
    },
  };
}
