// The engine that is there: which it is, and how its parts were found.

import { at, cell, chosen, group, numberOf, said, textOf, typed } from './build-fields.js';
import { states } from './build-words.js';
import { count, el, plain, sentence } from './format.js';

const stateOptions = Object.entries(states);

/** What is known of one position; the rest of it is folded until it is wanted. */
function found(position, known) {
  const state = chosen(known?.state ?? 'not-inspected', stateOptions, { id: `found-${position.position}` });
  const fields = {
    allowance: typed(known?.allowance, { inputmode: 'decimal' }), sellsFor: typed(known?.sellsFor, { inputmode: 'decimal' }),
      item: typed(known?.item, { class: 'typed' }), note: typed(known?.note),
  };
  const more = group('More', () => Object.entries(fields).filter(([, input]) => textOf(input)).map(([, input]) => textOf(input)).join('; '),
    el('div', { class: 'cells' }, cell('Set aside for it', fields.allowance, 'Where it is kept and nobody inspected it.'),
      cell('It sells for', fields.sellsFor, 'Where it is not kept.'),
      cell('Item', fields.item, 'As book/item: its readings speak for it.'), cell('Note', fields.note)));
  more.querySelector('summary').append(el('span', { class: 'unseen' }, ` of ${position.name}`));
  return {
    node: el('div', { class: 'found-at' }, el('label', { for: state.id }, sentence(position.name)), state, more),
    isTold: () => state.value !== 'not-inspected' || known?.state === 'not-inspected' || Object.values(fields).some(input => textOf(input)),
    position: position.position,
    read: path => said({
      position: position.position, state: at(`${path}.state ${path} ${path}.position`, state).value,
      ...Object.fromEntries(Object.entries(fields).map(([name, input]) => [name, textOf(at(`${path}.${name}`, input))])),
    }),
    state,
  };
}

const summaryOf = rows => {
  const told = ['good', 'damaged', 'missing'].map(state => [state, rows.filter(row => row.state.value === state).length]).filter(([, many]) => many > 0);
  return told.map(([state, many]) => `${many} ${state}`).join('; ') || 'nothing inspected yet';
};

/** All of a group at once, for who has taken it apart. */
function allOf(rows, name) {
  const select = chosen('', [['', 'leave each as it is'], ...stateOptions], {
    'aria-label': `All of ${name}`,
    onchange() {
      if (select.value) for (const row of rows) row.state.value = select.value;
      select.value = '';
    },
  });
  return el('div', { class: 'found-at' }, el('span', { class: 'quiet' }, 'All of them'), select);
}

/** Fields of the donor; `read()` gives what they say. */
export function donorFields(donor, family) {
  const variant = chosen(donor.variant, family.variants.map(one => [one.variant, one.name]));
  const [built, serial, price] = [typed(donor.built, { class: 'typed' }), typed(donor.serial, { inputmode: 'numeric', class: 'typed' }),
    typed(donor.price, { inputmode: 'decimal', class: 'typed' })];
  const known = new Map((donor.states ?? []).map(state => [state.position, state]));
  const told = [...known.keys()];
  const order = row => (known.has(row.position) ? told.indexOf(row.position) : told.length);
  const rows = [];
  const unseen = () => rows.filter(row => row.state.value === 'not-inspected').length;
  const groups = family.groups.map(name => {
    const own = family.positions.filter(position => position.group === name).map(position => found(position, known.get(position.position)));
    rows.push(...own);
    return own.length ? group(sentence(plain(name)), () => summaryOf(own), allOf(own, plain(name)), own.map(row => row.node)) : null;
  });
  return {
    nodes: [
      group('The engine you have', () => [variant.selectedOptions[0]?.text, built.value && `built ${built.value}`, serial.value && `serial ${serial.value}`,
        price.value && `for ${price.value}`].filter(Boolean).join('; '),
        el('div', { class: 'cells' }, cell('Variant', variant), cell('Build date', built, 'Year and month, or the day.'), cell('Serial', serial),
          cell('What it cost', price, 'Stands beside the sum of the plan.'))),
      group('How its parts were found', () => `${summaryOf(rows)}; ${count(unseen(), 'position')} not inspected`, groups),
    ],
    read: () => said({
      variant: at('donor.variant', variant).value, built: textOf(at('donor.built', built)), serial: numberOf(at('donor.serial', serial)),
        price: textOf(at('donor.price', price)),
    }),
    /** In the order in which they were told first: what is not touched is not changed. */
    readStates: () => rows.filter(row => row.isTold()).toSorted((a, b) => order(a) - order(b)).map((row, index) => row.read(`donor.states[${index}]`)),
  };
}
