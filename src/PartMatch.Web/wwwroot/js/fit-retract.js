// "This turned out wrong": withdraws the evidence of a finding. It stays visible, with the reason, and counts for nothing.

import { Refusal, ask } from './api.js';
import { signature, today, write } from './editor.js';
import { clearFaults, faultSummary } from './faults.js';
import { whatChanged } from './fit-told.js';
import { count, el, evidenceLink } from './format.js';
import { tableName } from './record-words.js';

// Every table of a family's book whose rows name their evidence, but for what is said of the evidence itself; a test holds it to the columns.
const resting = [
  'bench-order', 'companions', 'curves', 'engine', 'findings', 'fitments', 'items', 'joints', 'limits', 'needs', 'openings', 'pairs', 'parts', 'photos', 'readings',
  'reminders', 'renewals', 'selects', 'stacks', 'supersessions', 'torques', 'values', 'variants', 'weak-points',
];

/** How many other rows rest on it, in words by table; '' where only the finding does. */
async function othersOn(book, code) {
  const counts = await Promise.all(resting.map(async table => {
    const { total } = await ask(`/api/books/${encodeURIComponent(book)}/${table}?${new URLSearchParams({ where: `evidence:${code}`, limit: '1' })}`);
    return [table, table === 'findings' ? total - 1 : total];
  }));
  const others = counts.filter(([, total]) => total > 0);
  const all = others.reduce((sum, [, total]) => sum + total, 0);
  const each = others.map(([table, total]) => `${tableName(table)} ${total}`).join(', ');
  return all === 0 ? '' : `${count(all, 'other row rests', 'other rows rest')} on it and will not count either: ${each}.`;
}

/** The form. `changed(answer, told)` shows the answer as it is afterwards, `leave()` puts everything back. */
export function retraction(answer, finding, { changed, leave }) {
  const book = answer.asked.family;
  const code = finding.evidence.evidence;
  const link = `/api/books/${encodeURIComponent(book)}/evidence/${encodeURIComponent(code)}`;
  const id = `wrong-${finding.code}`;
  const why = el('input', { id, name: 'retractedWhy', autocomplete: 'off', 'aria-describedby': `${id}-hint`, maxlength: 500 });
  const on = el('input', { id: `${id}-on`, name: 'retractedOn', autocomplete: 'off', value: today() });
  const note = signature({ why: 'Word for the history' });
  const others = el('p', { class: 'ask', role: 'status' });
  const button = el('button', null, 'Withdraw it');
  const form = el('form', { class: 'question', novalidate: true, 'aria-label': `Withdraw ${code}` },
    el('p', { class: 'ask' }, 'Its evidence ', evidenceLink(book, code), ' is withdrawn: it stays to be seen, with the reason, and counts for nothing.'),
    others,
    el('div', { class: 'cells' },
      el('div', { class: 'cell wide' }, el('label', { for: id }, 'What was wrong'), why,
        el('p', { class: 'hint', id: `${id}-hint` }, 'So that the rumour does not come back.')),
      el('div', { class: 'cell' }, el('label', { for: on.id }, 'Withdrawn on'), on), note.cells),
    el('p', { class: 'actions' }, button, el('button', { type: 'button', class: 'plain', onclick: leave }, 'Leave it')));

  function refuse(problem) {
    if (problem.status === 401) note.askForToken();
    const summary = faultSummary(form, problem.status === 412 ? { ...problem, errors: [] } : problem);
    const now = problem.status === 412 ? ['Somebody has changed this evidence meanwhile. ', evidenceLink(book, code), ' shows it as it is now. '] : '';
    summary.append(el('p', null, now, 'Nothing was stored, and nothing you typed is lost.'));
    form.before(summary);
    summary.focus();
  }

  async function withdraw() {
    clearFaults(form);
    form.parentElement.querySelector('.faults')?.remove();
    if (!why.value.trim()) {
      const missing = { field: 'retractedWhy', found: 'nothing', expected: 'what was wrong with it', mend: 'say it in a sentence' };
      return refuse({ type: '', title: 'The reason is missing', errors: [missing] });
    }

    button.disabled = true;
    try {
      const { row, version } = await seen;
      const body = { ...row, retractedOn: on.value.trim(), retractedWhy: why.value.trim() };
      const done = await write(link, { method: 'PUT', body, version, note: note.read() });
      const now = await ask(answer.permalink).catch(() => null);
      changed(now ?? answer, whatChanged(answer, now, done, 'Withdrawn'));
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      refuse(error.problem);
    } finally {
      button.disabled = false;
    }
  }

  form.addEventListener('submit', event => {
    event.preventDefault();
    withdraw();
  });
  const seen = ask(link); // as it was when the reader decided: a later change by somebody else is not overwritten
  seen.catch(() => {}); // told when it is sent
  othersOn(book, code).then(text => { others.textContent = text; }).catch(() => {});
  queueMicrotask(() => why.focus());
  return form;
}
