// Puts what the server refused where it can be mended: at its field, and in a summary that receives focus.

import { el, sentence } from './format.js';

const fieldOf = (form, name) => form?.querySelector(`[data-field~="${CSS.escape(name)}"]`) ?? form?.querySelector(`[name="${CSS.escape(name)}"]:not(:disabled)`) ?? null;

function holderOf(control) {
  return control.matches('fieldset') ? control : control.closest('.cell') ?? control.parentElement;
}

const isSaid = text => text !== undefined && text !== null && text.trim() !== '' && text !== 'nothing';

/** What was found, what was expected and how to mend it, in one sentence each. */
export function explain(error) {
  const where = error.file ? `${error.file}${error.line ? ` line ${error.line}` : ''}${error.column ? `, ${error.column}` : ''}: ` : '';
  const wrong = error.reason && !error.reason.startsWith('expected ') ? `: ${error.reason}` : `; expected ${error.expected}`;
  return `${where}${where ? 'found' : 'Found'} ${isSaid(error.found) ? `“${error.found}”` : 'nothing'}${wrong}.${isSaid(error.mend) ? ` To mend: ${error.mend}.` : ''}`;
}

// The server speaks of cells, as the books do: a column's name, a unit column, text as against text with control characters. Here they are fields.
const asOfFields = text => text
  .replace(/^empty, expected text without control characters.*$/, 'found nothing; it has to be filled in')
  .replace(/^empty, expected /, 'found nothing; expected ')
  .replace(/^the unit is missing: '[a-z0-9-]+' is kept in (\S+)$/, 'the unit is missing: expected one behind the number, such as $1')
  .replace(/\b[a-z]+(?:_[a-z]+)+\b/g, column => `“${column.replaceAll('_', ' ')}”`);

/** What a fault of a cell says: the server gives it as a sentence of its own. */
export function explainCell({ found, reason, expected, mend }) {
  const raw = reason ?? `expected ${expected}`;
  const wrong = asOfFields(raw);
  const said = isSaid(found) ? `“${found}”: ${wrong}` : sentence(wrong);
  const todo = isSaid(mend) && raw.startsWith('the unit is missing') ? `write ${mend} behind the number` : mend;
  return `${said}${/[.!?]$/.test(said) ? '' : '.'}${isSaid(todo) ? ` To mend: ${todo}.` : ''}`;
}

/** What a list to choose from says: its words stand in it, and the codes behind them are nobody's business. */
const explainChoice = (control, error, tell) => (control.matches('select') && control.value === '' && /one of: |^(?:expected )?the code of an? /.test(error.reason ?? error.expected)
  ? `Found nothing; expected one of the list. To mend: choose the ${nameOf(control)}.` : tell(error));

const nameOf = control => (control.labels[0]?.firstChild?.textContent.trim() || 'one you mean').replace(/^./, letter => letter.toLowerCase());

function mark(form, error, index, tell) {
  const control = fieldOf(form, error.field);
  if (!control) return null;
  const id = `fault-${index}`;
  holderOf(control).append(el('p', { class: 'field-error', id }, explainChoice(control, error, tell)));
  const folded = control.closest('details.more');
  if (folded) folded.open = true; // what is folded away takes no focus
  const focusable = control.matches('fieldset') ? control.querySelector('input:not(:disabled), select:not(:disabled)') ?? control : control;
  focusable.setAttribute('aria-invalid', 'true');
  focusable.dataset.hint ??= focusable.getAttribute('aria-describedby') ?? '';
  focusable.setAttribute('aria-describedby', [focusable.dataset.hint, id].filter(Boolean).join(' '));
  return focusable;
}

/** Takes every mark of an earlier refusal away. */
export function clearFaults(form) {
  for (const old of form?.querySelectorAll('.field-error') ?? []) old.remove();
  for (const old of form?.querySelectorAll('[aria-invalid]') ?? []) {
    old.removeAttribute('aria-invalid');
    if (old.dataset.hint) old.setAttribute('aria-describedby', old.dataset.hint);
    else old.removeAttribute('aria-describedby');
  }
}

/** The summary of a problem; its entries lead to the fields they speak of. `tell` puts an error into words. */
export function faultSummary(form, problem, tell = explain) {
  const entries = problem.errors.map((error, index) => {
    const control = mark(form, error, index, tell);
    const name = control?.closest('.cell')?.querySelector('legend, label')?.textContent ?? error.field;
    const text = `${name}: ${control ? explainChoice(control, error, tell) : tell(error)}`;
    return el('li', null, control ? el('a', { href: `#${control.id}`, onclick: event => { event.preventDefault(); control.focus(); } }, text) : text);
  });
  const code = problem.type.replace('/problems/', '');
  return el('div', { class: 'faults', tabindex: '-1', role: 'group', 'aria-labelledby': 'faults-title' },
    el('h2', { id: 'faults-title' }, problem.title),
    problem.detail ? el('p', null, problem.detail) : null,
    entries.length ? el('ul', null, entries) : null,
    code ? el('p', { class: 'small' }, el('a', { href: `problems.html#${code}` }, 'What this sort of problem means')) : null);
}
