// The list of donors of a build: each with its own fields, saved with the whole document.

import { Refusal } from './api.js';
import { donorFields } from './build-donor.js';
import { at, cell, entryList, group, typed } from './build-fields.js';
import { signature, write } from './editor.js';
import { clearFaults, faultSummary } from './faults.js';
import { count, el } from './format.js';

const codeFrom = name => name.normalize('NFKD').toLowerCase().replace(/[^a-z0-9]+/g, '-').replace(/^-|-$/g, '').slice(0, 60);

function entry(offer, family) {
  const name = typed(offer.name, { maxlength: 120 });
  const donor = donorFields(offer.donor ?? { variant: family.variants[0].variant }, family);
  const node = group(offer.name ?? 'Another donor', () => '',
    el('div', { class: 'cells' }, cell('What you call it', name, 'Whose it is, where it stands.', { wide: true })), donor.nodes);
  node.classList.add('wish');
  node.open = !offer.code;
  return {
    node,
    read: path => ({ code: offer.code ?? codeFrom(at(`${path}.name ${path}.code`, name).value), name: at(`${path}.name ${path}.code`, name).value.trim(),
      donor: donor.read(`${path}.donor`) }),
    focus: () => name.focus(),
  };
}

/** The form; `saved(answer)` is told what is stored. */
export function donorList({ build, version, family, status, saved }) {
  const note = signature();
  const list = entryList({ name: 'this donor', add: 'Put another donor on the list', values: build.donors, entry: offer => entry(offer, family) });
  const button = el('button', null, 'Save the list');
  const form = el('form', { novalidate: true, 'aria-label': 'The donors' },
    el('p', { class: 'quiet' }, `${count(build.donors?.length ?? 0, 'donor')} on the list, besides the one that the build has.`), list.node,
    el('div', { class: 'cells signature' }, note.cells), el('p', { class: 'actions' }, button));
  const place = el('div', { class: 'editing' }, form);

  function refuse(problem) {
    status.textContent = '';
    if (problem.status === 401) note.askForToken();
    const summary = faultSummary(form, problem);
    for (const folded of form.querySelectorAll('details:has([aria-invalid])')) folded.open = true;
    summary.append(el('p', null, 'Nothing was stored, and nothing you typed is lost.'));
    form.before(summary);
    summary.focus();
  }

  form.addEventListener('submit', async event => {
    event.preventDefault();
    clearFaults(form);
    place.querySelector('.faults')?.remove();
    button.disabled = true;
    status.textContent = 'Saving.';
    try {
      saved(await write(`/api/builds/${encodeURIComponent(build.code)}`,
        { method: 'PUT', version, body: { ...build, donors: list.read('donors') }, note: note.read() }));
      status.textContent = 'Saved.';
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      refuse(error.problem);
    } finally {
      button.disabled = false;
    }
  });
  return place;
}
