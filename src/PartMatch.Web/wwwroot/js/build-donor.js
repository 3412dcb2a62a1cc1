// The engine that is there: which it is, and how its parts were found.

import { at, cell, chosen, entryList, group, numberOf, said, textOf, typed } from './build-fields.js';
import { states } from './build-words.js';
import { count, el, plain, sentence } from './format.js';

const stateOptions = Object.entries(states);

/** What is known of one position; the rest of it is folded until it is wanted. */
function found(position, known, id) {
  const state = chosen(known?.state ?? 'not-inspected', stateOptions, { id: `${id}-${position.position}` });
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

const levels = [['', 'not said'], ['bare', 'the bare block'], ['short', 'short: with crankshaft, rods and pistons'], ['long', 'long: with head and valve gear'],
  ['complete', 'complete'], ['heard-running', 'complete, heard running']];

/** What comes with it besides what its maker fitted. */
const boxed = values => entryList({
  name: 'what comes with it', add: 'Something else comes with it', values,
  entry(held) {
    const fields = { part: typed(held.part, { class: 'typed' }), pieces: typed(held.pieces ?? 1, { inputmode: 'numeric' }), note: typed(held.note) };
    return {
      node: el('div', { class: 'cells' }, cell('Part', fields.part, 'As maker:number.'), cell('Pieces', fields.pieces), cell('Note', fields.note)),
      read: path => said({ part: at(`${path}.part`, fields.part).value.trim(), pieces: numberOf(at(`${path}.pieces`, fields.pieces)),
        note: textOf(at(`${path}.note`, fields.note)) }),
      focus: () => fields.part.focus(),
    };
  },
});

/** What is paid for it and how it was offered. */
function terms(donor) {
  const fields = {
    price: typed(donor.price, { inputmode: 'decimal', class: 'typed' }), freight: typed(donor.freight, { inputmode: 'decimal', class: 'typed' }),
    currency: typed(donor.currency, { class: 'typed', maxlength: 3, autocapitalize: 'characters' }), level: chosen(donor.level ?? '', levels),
    seenOn: typed(donor.seenOn, { class: 'typed' }), note: typed(donor.note),
  };
  return {
    cells: [cell('Price', fields.price), cell('To fetch it', fields.freight, '0 where it costs nothing; empty where it is not known.'),
      cell('Currency of the two', fields.currency, 'Empty: that of the build.'), cell('Sold as', fields.level), cell('Seen on', fields.seenOn, 'Such as 2026-11-21.'),
      cell('Note', fields.note)],
    read: path => Object.fromEntries(Object.entries(fields).map(([name, input]) => [name, textOf(at(`${path}.${name}`, input))])),
    price: fields.price,
  };
}

let made = 0;

/** Fields of a donor that stands at `path` in the document; `read()` gives what they say. */
export function donorFields(donor, family, place = 'donor') {
  const id = `found-${made += 1}`;
  const variant = chosen(donor.variant, family.variants.map(one => [one.variant, one.name]));
  const [built, serial] = [typed(donor.built, { class: 'typed' }), typed(donor.serial, { inputmode: 'numeric', class: 'typed' })];
  const [paid, comesWith] = [terms(donor), boxed(donor.comesWith)];
  const known = new Map((donor.states ?? []).map(state => [state.position, state]));
  const told = [...known.keys()];
  const order = row => (known.has(row.position) ? told.indexOf(row.position) : told.length);
  const rows = [];
  const unseen = () => rows.filter(row => row.state.value === 'not-inspected').length;
  const groups = family.groups.map(name => {
    const own = family.positions.filter(position => position.group === name).map(position => found(position, known.get(position.position), id));
    rows.push(...own);
    return own.length ? group(sentence(plain(name)), () => summaryOf(own), allOf(own, plain(name)), own.map(row => row.node)) : null;
  });
  return {
    nodes: [
      group('The engine you have', () => [variant.selectedOptions[0]?.text, built.value && `built ${built.value}`, serial.value && `serial ${serial.value}`,
        paid.price.value && `for ${paid.price.value}`].filter(Boolean).join('; '),
        el('div', { class: 'cells' }, cell('Variant', variant), cell('Build date', built, 'Year and month, or the day.'), cell('Serial', serial), paid.cells),
        comesWith.node),
      group('How its parts were found', () => `${summaryOf(rows)}; ${count(unseen(), 'position')} not inspected`, groups),
    ],
    read: (path = place) => ({
      ...said({
        variant: at(`${path}.variant`, variant).value, built: textOf(at(`${path}.built`, built)), serial: numberOf(at(`${path}.serial`, serial)),
        ...paid.read(path), comesWith: comesWith.read(`${path}.comesWith`),
      }),
      // In the order in which they were told first: what is not touched is not changed.
      states: rows.filter(row => row.isTold()).toSorted((a, b) => order(a) - order(b)).map((row, index) => row.read(`${path}.states[${index}]`)),
    }),
  };
}
