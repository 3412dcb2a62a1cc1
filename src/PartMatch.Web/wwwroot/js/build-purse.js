// What a build may cost, when it is needed, what is there already, and which offers count.

import { askOnce } from './api.js';
import { at, cell, chosen, entryList, group, numberOf, said, textOf, tick, typed } from './build-fields.js';
import { count, el, plain } from './format.js';

const cells = (...content) => el('div', { class: 'cells' }, content);

const heldEntry = held => {
  const [part, pieces, note] = [typed(held.part, { class: 'typed' }), typed(held.pieces ?? 1, { inputmode: 'numeric' }), typed(held.note)];
  return {
    node: cells(cell('Part', part, 'With its maker, as pellworth:P-11-4003-A.'), cell('Pieces', pieces), cell('Note', note)),
    read: path => said({ part: at(`${path}.part ${path}`, part).value.trim(), pieces: numberOf(at(`${path}.pieces`, pieces)),
      note: textOf(at(`${path}.note`, note)) }), focus: () => part.focus(),
  };
};

const workEntry = (works, family) => asked => {
  const work = chosen(asked.work ?? '', [['', 'Choose a work'], ...works.map(row => [row.work, row.name ?? plain(row.work)])]);
  const whenNew = chosen(asked.whenNew ?? '', [['', 'in any case'],
    ...family.positions.map(one => [one.position, `only where not the donor’s own: ${one.name}`])]);
  const note = typed(asked.note);
  return {
    node: cells(cell('Work', work), cell('When', whenNew), cell('Note', note)),
    read: path => said({ work: at(`${path}.work ${path}`, work).value, whenNew: textOf(at(`${path}.whenNew`, whenNew)),
      note: textOf(at(`${path}.note`, note)) }), focus: () => work.focus(),
  };
};

const rateEntry = rate => {
  const [currency, is, from] = [typed(rate.currency, { class: 'typed', maxlength: 3 }), typed(rate.is, { class: 'typed', inputmode: 'decimal' }),
    typed(rate.from)];
  return {
    node: cells(cell('One unit of', currency, 'Three letters such as GBP.'), cell('costs in the build’s currency', is), cell('Read where and when', from)),
    read: path => said({ currency: at(`${path}.currency ${path}`, currency).value.trim().toUpperCase(), is: textOf(at(`${path}.is`, is)),
      from: textOf(at(`${path}.from`, from)) }), focus: () => currency.focus(),
  };
};

/** A group of entries, its line counting them. */
function listed(title, what, list) {
  return group(title, () => (list.size() ? count(list.size(), what) : 'none'), list.node);
}

/** Sellers to choose from, each once. */
async function refusedSellers(refused) {
  const { sellers } = await askOnce('/api/sellers');
  const known = new Map(sellers.map(({ terms }) => [terms.code, terms.name]));
  for (const code of refused) if (!known.has(code)) known.set(code, code);
  const ticks = [...known].map(([code, name]) => ({ code, ...tick(name, refused.includes(code)) }));
  const node = el('fieldset', { class: 'cell wide' }, el('legend', null, 'Sellers not to buy from'),
    el('div', { class: 'choices' }, ticks.map(one => one.node)));
  return { node, read: () => (at('refusedSellers', node), ticks.filter(one => one.input.checked).map(one => one.code)) };
}

/** Which offers count, in short: what is taken where they do not say it, and what leaves them out. */
function countedText(refused, age, taken) {
  const isSaid = ([, text]) => text !== '';
  const open = taken.filter(one => !isSaid(one)).map(([name]) => name);
  return [
    refused ? `${count(refused, 'seller')} refused` : '', age ? `at most ${age} days old` : 'however old',
    ...taken.filter(isSaid).map(([name, text, unit]) => `${name} taken as ${[text, unit].filter(Boolean).join(' ')} where not said`),
    open.length ? `left out where not said: ${open.join(', ')}` : 'none is left out for a term not said',
  ].filter(Boolean).join('; ');
}

/** Everything of a statement about money, days and offers. */
export async function purseFields(build, family) {
  const { rows } = await askOnce('/api/books/common/works?limit=1000');
  const refused = await refusedSellers(build.refusedSellers ?? []);
  const texts = Object.fromEntries(['currency', 'budget', 'neededBy', 'startOn',
    'sendingWhereNotSaid'].map(name => [name, typed(build[name], { class: 'typed' })]));
  const numbers = Object.fromEntries(['offersAtMostDaysOld', 'daysWhereNotSaid',
    'importPercentWhereNotSaid'].map(name => [name, typed(build[name], { class: 'typed', inputmode: 'decimal' })]));
  const lists = {
    inHand: entryList({ name: 'part in hand', add: 'Add a part in hand', values: build.inHand, entry: heldEntry }),
    works: entryList({ name: 'work', add: 'Add a work', values: build.works, entry: workEntry(rows.map(({ row }) => row), family) }),
    rates: entryList({ name: 'rate', add: 'Add a rate', values: build.rates, entry: rateEntry }),
  };
  return {
    nodes: [
      listed('Parts in hand, besides the donor', 'part', lists.inHand), listed('Work besides what the parts ask for', 'work', lists.works),
      group('Money and days', () => [texts.budget.value ? `at most ${texts.budget.value} ${texts.currency.value}` : `no limit, in ${texts.currency.value}`,
        texts.neededBy.value && `by ${texts.neededBy.value}`].filter(Boolean).join('; '),
        cells(cell('Currency', texts.currency, 'Everything is reckoned in it.'), cell('At most', texts.budget, 'Empty: no limit.'),
          cell('Needed by', texts.neededBy, 'As 2026-12-24; there and worked.'),
          cell('Ordered on', texts.startOn, 'Empty: on the day of the question.'))),
      listed('What other currencies cost', 'rate', lists.rates),
      group('Which offers count', () => countedText(refused.read().length, numbers.offersAtMostDaysOld.value.trim(), [
        ['days', numbers.daysWhereNotSaid.value.trim(), ''], ['sending', texts.sendingWhereNotSaid.value.trim(), texts.currency.value],
        ['import charge', numbers.importPercentWhereNotSaid.value.trim(), '%']]),
        cells(refused.node, cell('At most so many days old', numbers.offersAtMostDaysOld, 'Empty: none is left out for its age.'),
          cell('Days, where not said', numbers.daysWhereNotSaid, 'Empty: such an offer is left out.'),
          cell('Sending, where not said', texts.sendingWhereNotSaid, 'Empty: such an offer is left out.'),
            cell('Import charge in percent, where not said', numbers.importPercentWhereNotSaid, 'Empty: such an offer is left out.'))),
    ],
    read: () => said({
      ...Object.fromEntries(Object.entries(texts).map(([name, input]) => [name, textOf(at(name, input))])),
        ...Object.fromEntries(Object.entries(numbers).map(([name, input]) => [name, numberOf(at(name, input))])),
      ...Object.fromEntries(Object.entries(lists).map(([name, list]) => [name, list.read(name)])), refusedSellers: refused.read(),
    }),
  };
}
