// What fitted, what ran and for how long, of every line of a finished build in one sitting.

import { Refusal } from './api.js';
import { at, cell, said, textOf, typed } from './build-fields.js';
import { signature, today, write } from './editor.js';
import { clearFaults, faultSummary } from './faults.js';
import { el, plain, sentence } from './format.js';

const outcomes = {
  mounts: ['Does it mount?', [['', 'not tried'], ['yes', 'went on'], ['with-work', 'went on after work'], ['no', 'did not go on']]],
  runs: ['Did the engine run the same?', [['', 'not run'], ['same', 'the same'], ['differently', 'differently']]],
};

const numberOf = part => part.replace(/^[^:]*:/, '');

function asked(name, part, index) {
  const [legend, options] = outcomes[name];
  const radios = options.map(([value, text]) => el('label', { class: 'choice' },
    el('input', { type: 'radio', name: `${name}-${part.position}`, value, checked: value === '' }), ` ${text}`));
  return el('fieldset', { 'data-field': `lines[${index}].${name}` }, el('legend', null, legend, el('span', { class: 'unseen' }, ` (${part.name})`)),
    el('div', { class: 'choices' }, radios));
}

const chosenOf = fieldset => fieldset.querySelector('input:checked').value || undefined;

/** One position: what is there, and what is told of it. */
function line(part, index) {
  const which = el('select', { 'data-field': `lines[${index}].part lines[${index}].position` }, (part.oneOf.length ? part.oneOf : ['none']).map(one =>
    el('option', { value: one }, one === 'none' ? 'nothing' : numberOf(one))), part.oneOf.length > 1 ? null : el('option', { value: '' }, 'something else'));
  if (part.oneOf.length > 1) which.prepend(el('option', { value: '-', selected: true }, 'not told which'));
  const other = typed('', { class: 'typed' });
  const otherCell = cell('Its number, as maker:number', other);
  otherCell.hidden = true;
  which.addEventListener('change', () => { otherCell.hidden = which.value !== ''; });
  const [mounts, runs, note] = [asked('mounts', part, index), asked('runs', part, index), typed('', { 'data-field': `lines[${index}].note` })];
  return {
    node: el('div', { class: 'telling', 'data-position': part.position, 'data-group': part.group },
      el('div', { class: 'cells' }, cell(sentence(part.name), which), otherCell, cell('What you saw', note)), mounts, runs),
    all(values) {
      if (which.value === '-') return;
      for (const [name, fieldset] of Object.entries({ mounts, runs })) {
        if (values[name] !== undefined) fieldset.querySelector(`input[value="${values[name]}"]`).checked = true;
      }
    },
    read: () => (which.value === '-' ? null : said({ position: part.position, part: which.value || other.value.trim(), mounts: chosenOf(mounts),
      runs: chosenOf(runs), note: textOf(note) })),
  };
}

/** The form; `again()` shows the list anew once it is stored. */
export function sittingForm(answer, { build, again }) {
  const note = signature({ why: 'Why you record it' });
  const lines = answer.parts.map(line);
  const fields = {
    date: at('date', typed(today(), { class: 'typed' })), hours: at('hours', typed('', { inputmode: 'decimal' })), output: at('output', typed('')),
      fuel: at('fuel', typed('')),
    instrument: at('instrument', typed('')),
  };
  const button = el('button', null, 'Record it all');
  const all = (values, text) => el('button', { type: 'button', class: 'plain', onclick: () => { for (const one of lines) one.all(values); } }, text);
  const groups = [...new Set(answer.parts.map(part => part.group))].map(group => el('details', { class: 'more' }, el('summary', null, sentence(plain(group))),
    lines.filter((_, index) => answer.parts[index].group === group).map(one => one.node)));
  const form = el('form', { class: 'question asking', novalidate: true, 'aria-label': 'What was found of the finished build' },
    el('p', { class: 'quiet' }, 'Say only what you know: a line that you leave as it stands records nothing. What runs is worth more the longer it ran, and under load.'),
    el('div', { class: 'cells' }, cell('On which date', fields.date, 'Such as 2027-03 or 2027-03-14.'),
      cell('Hours under load', fields.hours, 'A plain number; empty where nobody counted.'),
      cell('Power while it ran', fields.output, 'With its unit, such as 165 kW.'), cell('Fuel', fields.fuel), cell('Measured with', fields.instrument)),
    el('p', { class: 'buttons' }, all({ mounts: 'yes' }, 'All of it went on'), all({ runs: 'same' }, 'It ran as wished with all of it'),
      all({ mounts: '', runs: '' }, 'Take all answers back')),
    groups, el('div', { class: 'cells signature' }, note.cells), el('p', { class: 'actions' }, button));

  form.addEventListener('submit', async event => {
    event.preventDefault();
    clearFaults(form);
    form.parentElement.querySelector('.faults')?.remove();
    button.disabled = true;
    const sent = lines.map(one => one.read());
    try {
      await write(`/api/builds/${encodeURIComponent(build.code)}/findings`, {
        body: said({ ...Object.fromEntries(Object.entries(fields).map(([name, input]) => [name, textOf(input)])), lines: sent.filter(Boolean) }),
          note: note.read(),
      });
      await again();
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      if (error.problem.status === 401) note.askForToken();
      const places = sent.flatMap((one, index) => (one ? [index] : [])); // what is not told which is not sent
      const errors = error.problem.errors.map(one => ({ ...one, field: one.field.replace(/^lines\[(\d+)\]/, (_, index) => `lines[${places[index]}]`) }));
      const summary = faultSummary(form, { ...error.problem, errors });
      summary.append(el('p', null, 'Nothing was stored, and nothing you typed is lost.'));
      form.before(summary);
      summary.focus();
    } finally {
      button.disabled = false;
    }
  });
  return form;
}
