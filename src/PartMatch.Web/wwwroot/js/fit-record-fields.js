// What is asked of somebody who tried a part: two questions, how they know, and what a doubter would want to hear of it.

import { today } from './editor.js';
import { el } from './format.js';

const grades = [
  ['trial-fitted', 'I put it on, no more'], ['ran-under-load', 'It ran under load'], ['measured', 'I measured it'],
  ['makers-document', 'I read it in a maker’s document'], ['reported', 'A builder told me'],
];

const outcomes = {
  mounts: ['Does it mount?', [['yes', 'went on'], ['with-work', 'went on after work'], ['no', 'did not go on'], ['', 'not tried']]],
  runs: ['Did the engine run the same?', [['same', 'the same'], ['differently', 'differently'], ['', 'not run']]],
};

const empty = {
  mounts: ['Can the position stay empty?', [['yes', 'yes'], ['with-work', 'after work'], ['no', 'no'], ['', 'not tried']]],
  runs: outcomes.runs,
};

const direct = ['trial-fitted', 'ran-under-load', 'measured'];
const ran = ['ran-under-load'];

// Of each: name, column of the book, for which ways of knowing it is asked, label, hint, attributes.
const texts = [
  ['hours', 'sources.hours', ran, 'Hours under load', 'A plain number, such as 3.5.', { inputmode: 'decimal' }],
  ['output', 'sources.output sources.outputUnit', ran, 'Power while it ran', 'With its unit, such as 41 kW.', {}],
  ['fuel', 'sources.fuel', ran, 'Fuel', 'In words, such as petrol 95.', {}],
  ['author', 'evidence.author', ['makers-document'], 'Whose document', 'The maker that wrote it.', {}],
  ['author', 'evidence.author', ['reported'], 'Who told you', 'So that somebody can ask again.', {}],
  ['instrument', 'sources.instrument', direct, 'With what', 'By hand, or the instrument and how finely it reads.', {}],
  ['source', 'evidence.source', null, 'Where it is written down', 'Bench sheet, log, letter, message.', {}],
  ['page', 'sources.page', ['makers-document'], 'Page', 'Page, sheet or line.', {}],
];

function choices(name, column, legend, options, chosen) {
  return el('fieldset', { class: 'cell wide', 'data-field': `${name} ${column}` }, el('legend', null, legend),
    el('div', { class: 'choices' }, options.map(([value, text]) => el('label', { class: 'choice' },
      el('input', { type: 'radio', id: `found-${name}-${value || 'none'}`, name: `found-${name}`, value, checked: value === chosen }), text))));
}

function typed(name, column, label, hint, attributes, tag = 'input') {
  const id = `found-${name}${attributes['data-for'] ? `-${attributes['data-for'].split(' ')[0]}` : ''}`;
  return el('div', { class: tag === 'textarea' ? 'cell wide' : 'cell' }, el('label', { for: id }, label),
    el(tag, { id, name: `found-${name}`, autocomplete: 'off', 'data-field': column, 'aria-describedby': `${id}-hint`, ...attributes }),
    el('p', { class: 'hint', id: `${id}-hint` }, hint));
}

const engine = ({ serial, built }) => [serial === undefined ? '' : `serial ${serial}`, built ? `built ${built}` : ''].filter(Boolean).join(', ');

/** Which engines it holds for; asked only where the question named one. */
function spans(asked) {
  const one = engine(asked);
  if (!one) return null;
  const options = [
    ['', 'every engine of this variant'], ['only', `only this one: ${one}`], ['from', `from this one on: ${one}`], ['to', `up to this one: ${one}`],
  ];
  return el('div', { class: 'cell' }, el('label', { for: 'found-span' }, 'It holds for'),
    el('select', { id: 'found-span', name: 'found-span', 'data-field': 'findings.builtFrom findings.builtTo findings.serialFrom findings.serialTo' },
      options.map(([value, text]) => el('option', { value }, text))));
}

/** The span columns of a finding: limited only where somebody says so. */
export function boundsOf({ serial, built }, span) {
  const [isFrom, isTo] = [['only', 'from'].includes(span), ['only', 'to'].includes(span)];
  const text = serial === undefined ? '' : String(serial);
  return { builtFrom: isFrom ? built : '', builtTo: isTo ? built : '', serialFrom: isFrom ? text : '', serialTo: isTo ? text : '' };
}

/** The cells, and `read`, `write` of their texts by name; what is not asked for the chosen way of knowing is not read. */
export function questionsFor({ asked }) {
  const words = asked.part === 'none' ? empty : outcomes;
  const conditional = texts.map(([name, column, ways, label, hint, attributes]) =>
    typed(name, column, label, hint, { ...attributes, 'data-for': ways?.join(' ') ?? null }));
  const cells = [
    choices('grade', 'evidence.grade', 'How do you know?', grades, null),
    choices('mounts', 'findings.mounts', ...words.mounts, ''), choices('runs', 'findings.runs', ...words.runs, ''),
    ...conditional,
    typed('date', 'evidence.date', 'On which date', 'Such as 2019-04 or 2019-04-30.', { value: today() }), spans(asked),
    typed('note', 'findings.note', 'What you saw', 'In a sentence, with numbers; what was new, what was not looked at.', { rows: 2 }, 'textarea'),
  ].filter(Boolean);
  const controls = () => cells.flatMap(cell => [...cell.querySelectorAll('input, select, textarea')]);
  const nameOf = control => control.name.replace('found-', '');
  const grade = () => cells[0].querySelector('input:checked')?.value;

  function settle() {
    for (const cell of conditional) {
      const control = cell.querySelector('input');
      cell.hidden = control.dataset.for !== undefined && !control.dataset.for.split(' ').includes(grade());
      control.disabled = cell.hidden;
    }
  }

  cells[0].addEventListener('change', settle);
  settle();
  return {
    cells,
    read: () => Object.fromEntries(controls().filter(control => !control.disabled && (control.type !== 'radio' || control.checked))
      .map(control => [nameOf(control), control.value.trim()])),
    write(given) {
      for (const control of controls().filter(one => one.type === 'radio')) control.checked = control.value === given[nameOf(control)];
      settle();
      for (const control of controls().filter(one => one.type !== 'radio' && !one.disabled)) control.value = given[nameOf(control)] ?? '';
    },
    focus: () => cells[0].querySelector('input').focus(),
  };
}
