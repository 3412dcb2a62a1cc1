// Taking a row out of its book, in two steps; evidence is rather retracted.

import { Refusal } from './api.js';
import { signature, write } from './editor.js';
import { faultSummary } from './faults.js';
import { el } from './format.js';
import { dependents } from './history-words.js';
import { rowName } from './record-words.js';

/**
 * @param question `{table, link, version(), retract, removed(answer)}`; `retract` is null where the row is no evidence that still counts.
 */
export function removal({ table, link, version, retract, removed }) {
  const name = rowName(table);
  const place = el('div', { class: 'removal' });
  const open = el('button', { type: 'button', class: 'plain', onclick: confirm }, `Remove this ${name} …`);
  const instead = () => el('button', { type: 'button', class: 'plain', onclick: () => { close(); retract(); } }, 'Retract it instead');

  function close() {
    place.replaceChildren(el('p', { class: 'buttons' }, open, retract ? instead() : ''));
  }

  function refuse(form, problem, note) {
    if (problem.status === 401) note.askForToken();
    const isInUse = problem.type === '/problems/in-use';
    const summary = faultSummary(form, isInUse ? { ...problem, title: `It cannot go: ${problem.title.toLowerCase()}`, errors: [] } : problem);
    if (isInUse) {
      summary.querySelector('h2 + p').after(
        el('p', null, retract ? ['What no longer holds can be retracted: it stays visible and counts for nothing. ', instead()] : 'Change or remove those first.'),
        dependents(problem));
    }

    if (problem.status === 412) summary.append(el('p', null, el('a', { href: location.href }, 'Read the row again'), ' and look at what has changed.'));
    form.before(summary);
    summary.focus();
  }

  function confirm() {
    const note = signature({ why: 'Why remove it' });
    const form = el('form', { class: 'question', novalidate: true, 'aria-label': `Remove this ${name}` },
      el('p', { class: 'ask' }, `The ${name} leaves the book. The history keeps it, and it can be taken back from there.`,
        retract ? ' What was once believed and no longer holds is better retracted: then everybody sees that it was.' : ''),
      el('div', { class: 'cells' }, note.cells),
      el('p', { class: 'actions' }, el('button', { class: 'stern' }, 'Yes, remove it'),
        el('button', { type: 'button', class: 'plain', onclick: () => { close(); open.focus(); } }, 'Keep it'), retract ? instead() : ''));
    form.addEventListener('submit', async event => {
      event.preventDefault();
      place.querySelector('.faults')?.remove();
      form.querySelector('button').disabled = true;
      try {
        removed(await write(link, { method: 'DELETE', version: version(), note: note.read() }));
      } catch (error) {
        if (!(error instanceof Refusal)) throw error;
        refuse(form, error.problem, note);
        form.querySelector('button').disabled = false;
      }
    });
    place.replaceChildren(form);
    note.why.focus();
  }

  close();
  return place;
}
