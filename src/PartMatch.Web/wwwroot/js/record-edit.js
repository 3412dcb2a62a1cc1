// Working on one row: its form, saving it, what to do when the server refuses or somebody else was quicker, and the draft.

import { Refusal } from './api.js';
import { signature, today, write } from './editor.js';
import { clearFaults, explainCell, faultSummary } from './faults.js';
import { address, el } from './format.js';
import { dependents } from './history-words.js';
import { conflict, goneMeanwhile, merged } from './record-conflict.js';
import { draftOf, draftOffer, findDraft, forgetDraft } from './record-draft.js';
import { differing, textsOf } from './record-fields.js';
import { rowForm } from './record-form.js';
import { rowName } from './record-words.js';

/** The form with everything that happens to it. `saved(answer, isNew)` is called once the row is stored. */
export async function editing({ book, table, fields, row, version, link, begun, saved, status }) {
  const here = location.search;
  const place = el('div', { class: 'editing' });
  const state = { version, link, base: textsOf(fields, row ?? {}), isNew: !row };
  const first = row ? state.base : begun; // what the form shows before anything is typed
  const inner = await rowForm({ fields, table, book, texts: first, recorded: row ?? {} });
  const note = signature();
  const button = el('button', null, state.isNew ? `Add this ${rowName(table)}` : 'Save');
  const form = el('form', { class: 'question row', novalidate: true, 'aria-label': `This ${rowName(table)}` },
    el('p', { class: 'ask' }, 'Leave empty what is not known: an empty field never means nought, no or none.'),
    el('div', { class: 'cells' }, inner.cells), inner.lists, el('div', { class: 'cells signature' }, note.cells),
    el('p', { class: 'actions' }, button, el('a', { href: address('record.html', { book, table }) }, 'Back to the rows without saving')));
  const shown = { texts: first };
  const isChanged = () => !state.isDone && differing(fields, inner.read(), shown.texts).length > 0;
  const draft = draftOf(here, { isChanged, read: () => ({ texts: inner.read(), why: note.why.value, base: state.base, version: state.version }) });

  function clear() {
    clearFaults(form);
    for (const old of place.querySelectorAll('.faults, .conflict')) old.remove();
    place.parentElement?.querySelector('.notice.done')?.remove(); // it told of an earlier save
  }

  function show(node) {
    form.before(node);
    node.focus();
    node.scrollIntoView({ block: 'nearest' });
  }

  function becomeNew() {
    Object.assign(state, { isNew: true, version: undefined });
    button.textContent = `Add this ${rowName(table)}`;
    form.requestSubmit();
  }

  async function settleStale({ present, removed }) {
    if (!present) {
      show(goneMeanwhile({ changed: removed, again: becomeNew }));
      return;
    }

    const versions = { base: state.base, mine: inner.read(), theirs: textsOf(fields, present.row) };
    Object.assign(state, { version: present.version, base: versions.theirs });
    shown.texts = versions.theirs;
    inner.write(merged(fields, versions));
    await inner.settle();
    draft.keep();
    show(conflict({
      fields, versions, changed: present.changed, save: () => form.requestSubmit(),
      take: (name, text) => { inner.set(name, text); draft.keep(); },
    }));
  }

  async function refuse(problem) {
    status.textContent = '';
    if (problem.status === 412) return settleStale(problem);
    if (problem.status === 401) note.askForToken();
    const isInUse = problem.type === '/problems/in-use';
    const summary = faultSummary(form, isInUse ? { ...problem, errors: [] } : problem, problem.type === '/problems/bad-row' ? explainCell : undefined);
    if (isInUse) summary.append(dependents(problem));
    summary.append(el('p', null, 'Nothing was stored, and nothing you typed is lost.'));
    show(summary);
  }

  async function save() {
    clear();
    button.disabled = true;
    status.textContent = 'Saving.';
    try {
      const options = { body: inner.row(), note: note.read() };
      const answer = state.isNew
        ? await write(`/api/books/${encodeURIComponent(book)}/${table}`, options)
        : await write(state.link, { ...options, method: 'PUT', version: state.version });
      state.isDone = true;
      draft.forget();
      draft.end();
      saved(answer, state.isNew);
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      await refuse(error.problem);
    } finally {
      button.disabled = false;
    }
  }

  form.addEventListener('submit', event => {
    event.preventDefault();
    save();
  });
  form.addEventListener('input', () => draft.keep());
  form.addEventListener('change', () => inner.settle());

  const before = findDraft(here);
  if (before && differing(fields, before.texts, first).length > 0) {
    place.append(draftOffer(before, differing(fields, before.texts, before.base ?? first).filter(field => before.texts[field.name]).map(field => field.label), {
      forget: () => forgetDraft(here),
      async take() {
        // Saved as a change of what was there then: if that has changed since, both versions are shown.
        if (!state.isNew) Object.assign(state, { base: before.base, version: before.version });
        inner.write(before.texts);
        note.why.value = before.why ?? '';
        await inner.settle();
        draft.keep();
        form.querySelector('input, select, textarea').focus();
      },
    }));
  }

  place.append(form);
  return {
    node: place, version: () => state.version,
    leave() { state.isDone = true; draft.forget(); draft.end(); },
    detach: () => draft.end(),
    retract: 'retractedOn' in first && !first.retractedOn ? () => {
      inner.set('retractedOn', today());
      draft.keep();
      inner.focus('retractedWhy');
      status.textContent = 'Retracted on today. Say why, then save.';
    } : null,
  };
}
