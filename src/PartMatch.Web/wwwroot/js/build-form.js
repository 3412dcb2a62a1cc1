// The statement of a build as a form: kept in this tab until it is saved, refused at its fields, laid beside what somebody else saved meanwhile.

import { Refusal } from './api.js';
import { donorFields } from './build-donor.js';
import { goalFields } from './build-goal.js';
import { purseFields } from './build-purse.js';
import { wishList } from './build-wishes.js';
import { group, said } from './build-fields.js';
import { signature, write } from './editor.js';
import { clearFaults, faultSummary } from './faults.js';
import { count, el } from './format.js';
import { draftOf, draftOffer, findDraft, forgetDraft } from './record-draft.js';

/** The fields of a document. `read()` gives what they say now. */
async function fieldsOf(document, family) {
  const donor = donorFields(document.donor, family);
  const goal = goalFields(document, family);
  const wishes = wishList(document.wishes, family);
  const purse = await purseFields(document, family);
  return {
    nodes: [donor.nodes, goal.node, group('Wishes', () => (wishes.size() ? count(wishes.size(), 'wish', 'wishes') : 'none'), wishes.node), purse.nodes],
    read: () => said({ code: document.code, family: document.family, ...goal.read(), donor: donor.read(),
      donors: document.donors, // on their own sheet
      wishes: wishes.read('wishes'), ...purse.read() }),
  };
}

const same = (one, other) => JSON.stringify(one) === JSON.stringify(other);

/** The form; `saved(answer)` is told what is stored. */
export async function statementForm({ build, version, family, status, saved }) {
  const key = `build ${build.code}`;
  const url = `/api/builds/${encodeURIComponent(build.code)}`;
  const note = signature();
  const button = el('button', null, 'Save it');
  const holder = el('div');
  const form = el('form', { novalidate: true, 'aria-label': 'What you want' }, holder, el('div', { class: 'cells signature' }, note.cells),
    el('p', { class: 'actions' }, button,
    el('a', { class: 'quiet small', href: `${url}/file`, download: `${build.code}.build.json` }, 'Take out the file'),
      el('button', { type: 'button', class: 'plain', onclick: remove }, 'Delete this build')));
  const place = el('div', { class: 'editing' }, form);
  const state = { seen: version, base: build, fields: null, begun: null, isDone: false };
  const isChanged = () => !state.isDone && form.isConnected && state.begun !== null && !same(state.fields.read(), state.begun);
  const draft = draftOf(key, { read: () => ({ document: state.fields.read(), version: state.seen }), isChanged });

  async function fill(document) {
    state.fields = await fieldsOf(document, family);
    holder.replaceChildren(...state.fields.nodes.flat(Infinity).filter(Boolean));
  }

  function tell(node) {
    form.before(node);
    node.focus();
    node.scrollIntoView({ block: 'nearest' });
  }

  function clear() {
    clearFaults(form);
    for (const old of place.querySelectorAll('.faults, .conflict')) old.remove();
  }

  async function refuse(problem) {
    status.textContent = '';
    if (problem.status === 412 && problem.presentBuild) {
      const { conflictOf } = await import('./build-overtaken.js');
      tell(conflictOf({
        base: state.base, mine: problem.yourBuild ?? state.fields.read(), present: problem.presentBuild, family,
        async save(document) {
          Object.assign(state, { seen: problem.presentBuild.version, base: problem.presentBuild.document });
          await fill(document);
          await save();
        },
      }));
      return;
    }

    if (problem.status === 401) note.askForToken();
    const summary = faultSummary(form, problem);
    for (const folded of form.querySelectorAll('details:has([aria-invalid])')) folded.open = true;
    summary.append(el('p', null, 'Nothing was stored, and nothing you typed is lost.'));
    tell(summary);
  }

  async function send(request, done) {
    clear();
    button.disabled = true;
    status.textContent = 'Saving.';
    try {
      const answer = await request();
      state.isDone = true;
      draft.forget();
      draft.end();
      status.textContent = 'Saved.';
      done(answer);
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      await refuse(error.problem);
    } finally {
      button.disabled = false;
    }
  }

  const save = () => send(() => write(url, { method: 'PUT', body: state.fields.read(), version: state.seen, note: note.read() }), saved);

  function remove() {
    if (window.confirm('Delete this build? Its versions stay and can be brought back.')) send(() => write(url,
      { method: 'DELETE', version: state.seen, note: note.read() }), () => location.assign('builds.html'));
  }

  form.addEventListener('submit', event => { event.preventDefault(); save(); });
  for (const type of ['input', 'change']) form.addEventListener(type, () => draft.keep());
  await fill(build);
  state.begun = state.fields.read();
  const before = findDraft(key);
  if (before) {
    form.before(draftOffer(before, [], {
      forget: () => forgetDraft(key),
      async take() {
        state.seen = before.version;
        await fill(before.document);
        draft.keep();
        holder.querySelector('summary').focus();
      },
    }));
  }

  return place;
}
