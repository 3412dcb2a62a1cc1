// What fitted, what ran and for how long, of every line of a finished build in one sitting.

import { Refusal } from './api.js';
import { at, cell, said, textOf, typed } from './build-fields.js';
import { signature, today, write } from './editor.js';
import { clearFaults, faultSummary } from './faults.js';
import { count, el, plain, sentence } from './format.js';

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
  const stands = part.notYet.length ? el('input', { type: 'checkbox', name: `stands-${part.position}` }) : null;
  const [mounts, runs, note] = [asked('mounts', part, index), asked('runs', part, index), typed('', { 'data-field': `lines[${index}].note` })];
  return {
    node: el('div', { class: 'telling', 'data-position': part.position, 'data-group': part.group },
      el('div', { class: 'cells' }, cell(sentence(part.name), which), otherCell, cell('What you saw', note)), mounts, runs),
    /** One answer for all: what the plan expects of this line; nothing of one that is left out, or that the plan has run differently. */
    all(name) {
      if (which.value === '-' || (stands && !stands.checked) || (name === 'runs' && part.runs === 'differently')) return;
      const outcome = part[name] ?? (name === 'mounts' ? 'yes' : 'same');
      ({ mounts, runs })[name].querySelector(`input[value="${outcome}"]`).checked = true;
    },
    clear() {
      for (const fieldset of [mounts, runs]) fieldset.querySelector('input[value=""]').checked = true;
    },
    leftOut: stands ? el('li', null, el('label', null, stands, ` ${sentence(part.name)}: ${part.notYet.join('; ')}`)) : null,
    runsOtherwise: part.runs === 'differently' ? part.name : null,
    isDoubtful: () => Boolean(stands) && Boolean(chosenOf(mounts) || chosenOf(runs)),
    isMissing: () => Boolean(stands) && !stands.checked,
    read: () => (which.value === '-' ? null : said({ position: part.position, part: which.value || other.value.trim(), mounts: chosenOf(mounts),
      runs: chosenOf(runs), note: textOf(note), stands: (stands && (chosenOf(mounts) || chosenOf(runs))) ? true : undefined })),
  };
}

/** What "all of it" does not tell, each with the reason; ticked, it does. */
function leftOutOf(lines) {
  const [left, otherwise] = [lines.filter(one => one.leftOut), lines.map(one => one.runsOtherwise).filter(Boolean)];
  return [
    left.length ? el('details', { class: 'more left-out' }, el('summary', null, `${left.length} of ${count(lines.length, 'line')} ${left.length === 1 ? 'is' : 'are'} left out of “all of it”`),
      el('p', null, 'As far as the orders and the plan tell, these are not here, not looked at, or not worked yet. Tick what is so all the same.'),
      el('ul', { class: 'ticks' }, left.map(one => one.leftOut))) : null,
    otherwise.length ? el('p', { class: 'quiet' }, `The plan has these run differently, so that “as wished” says nothing of them: ${otherwise.join(', ')}. Say of each how the engine ran.`) : null,
  ];
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
  const each = (change, text) => el('button', { type: 'button', class: 'plain', onclick: () => { for (const one of lines) change(one); sure.hidden = true; } }, text);
  const sure = el('div', { class: 'notice sure', role: 'group', tabindex: '-1', 'aria-label': 'Before it is recorded', hidden: true });
  const groups = [...new Set(answer.parts.map(part => part.group))].map(group => el('details', { class: 'more' }, el('summary', null, sentence(plain(group))),
    lines.filter((_, index) => answer.parts[index].group === group).map(one => one.node)));
  const form = el('form', { class: 'question asking', novalidate: true, 'aria-label': 'What was found of the finished build' },
    el('p', { class: 'quiet' }, 'Say only what you know: a line that you leave as it stands records nothing. What runs is worth more the longer it ran, and under load.'),
    el('div', { class: 'cells' }, cell('On which date', fields.date, 'Such as 2027-03 or 2027-03-14.'),
      cell('Hours under load', fields.hours, 'A plain number; empty where nobody counted.'),
      cell('Power while it ran', fields.output, 'With its unit, such as 165 kW.'), cell('Fuel', fields.fuel), cell('Measured with', fields.instrument)),
    el('p', { class: 'buttons' }, each(one => one.all('mounts'), 'All of it went on'), each(one => one.all('runs'), 'It ran as wished with all of it'),
      each(one => one.clear(), 'Take all answers back')),
    leftOutOf(lines), groups, el('div', { class: 'cells signature' }, note.cells), el('p', { class: 'actions' }, button), sure);
  form.addEventListener('input', () => { sure.hidden = true; });

  /** What is recorded counts for every build of the family: it is asked once more, with the count. */
  function ask(sent) {
    const told = sent.filter(one => one && (one.mounts || one.runs));
    const findings = told.reduce((sum, one) => sum + (one.mounts ? 1 : 0) + (one.runs ? 1 : 0), 0);
    const doubtful = lines.filter(one => one.isDoubtful()).length;
    const missing = told.some(one => one.runs) ? lines.filter(one => one.isMissing()).length : 0;
    if (findings === 0) return false;
    sure.replaceChildren(...[el('p', null, el('strong', null, `${count(findings, 'finding')} of ${count(told.length, 'position')}, found on ${fields.date.value.trim()}. `),
      'They go into the book of the family and count for every build of it.'),
    missing ? el('p', { class: 'caution' }, `You say how it ran, and ${count(missing, 'position')} of it ${missing === 1 ? 'is' : 'are'} not here, not looked at or not worked, as far as the orders and the plan tell. No engine runs without what it needs: record this only of one that ran.`) : null,
    doubtful ? el('p', null, `${count(doubtful, 'of them is a position', 'of them are positions')} of which the orders and the plan say that it is not here, not looked at, or its work not done.`) : null,
    el('p', { class: 'actions' }, el('button', null, `Record ${count(findings, 'finding')}`), ' ',
      el('button', { type: 'button', class: 'plain', onclick: () => { sure.hidden = true; button.focus(); } }, 'Not yet'))].filter(Boolean));
    sure.hidden = false;
    sure.focus();
    return true;
  }

  form.addEventListener('submit', async event => {
    event.preventDefault();
    clearFaults(form);
    form.parentElement.querySelector('.faults')?.remove();
    const sent = lines.map(one => one.read());
    if (!sure.contains(event.submitter) && ask(sent)) return;
    sure.hidden = true;
    button.disabled = true;
    try {
      await write(`/api/builds/${encodeURIComponent(build.code)}/findings?objective=${encodeURIComponent(answer.asked.objective)}`, {
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
