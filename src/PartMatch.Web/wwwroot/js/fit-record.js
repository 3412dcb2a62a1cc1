// "Tried it?": what somebody found, as rows of the book, written from the answer it speaks of.

import { Refusal, ask } from './api.js';
import { positionName } from './choices.js';
import { signature, write } from './editor.js';
import { clearFaults, explain, faultSummary } from './faults.js';
import { boundsOf, questionsFor } from './fit-record-fields.js';
import { whatChanged } from './fit-told.js';
import { address, el, partLink } from './format.js';
import { draftOf, draftOffer, findDraft, forgetDraft } from './record-draft.js';

const mostTries = 3;

const place = (book, table) => `/api/books/${encodeURIComponent(book)}/${table}`;

/** The codes that a table does not have yet, counted on from its highest: `ev-0094`, `ev-0095`. */
async function nextCodes(book, table, column, prefix, many) {
  let highest = 0;
  for (let cursor = ''; cursor !== undefined;) {
    const page = await ask(`${place(book, table)}?${new URLSearchParams({ q: `${prefix}-`, limit: '1000', ...(cursor ? { cursor } : {}) })}`);
    for (const { row } of page.rows) highest = Math.max(highest, Number(new RegExp(`^${prefix}-(\\d+)$`).exec(row[column])?.[1] ?? 0));
    cursor = page.cursor;
  }

  return Array.from({ length: many }, (_, index) => `${prefix}-${String(highest + 1 + index).padStart(4, '0')}`);
}

const filled = row => Object.fromEntries(Object.entries(row).filter(([, text]) => text !== '' && text !== undefined && text !== null));

/** One piece of evidence, what more is to be said of it, and a finding for each question answered. */
function rowsOf(texts, { who, asked }, [evidence], codes) {
  const { grade, date, author, source, instrument, hours, output, fuel, page, mounts, runs, span, note } = texts;
  const more = filled({ instrument, hours, output, fuel, page, speaksOf: asked.item ? 'item' : '' });
  const about = {
    part: asked.part, variant: asked.variant, position: asked.position, ...boundsOf(asked, span), with: asked.with.toSorted().join('|'), evidence, note,
  };
  const outcomes = Object.entries({ mounts, runs }).filter(([, outcome]) => outcome);
  return [
    { table: 'evidence', row: filled({ evidence, grade, date, author: author || who, source }) },
    ...(Object.keys(more).length ? [{ table: 'sources', row: { evidence, ...more } }] : []),
    ...outcomes.map(([axis, outcome], index) => ({ table: 'findings', row: filled({ finding: codes[index], ...about, axis, outcome }) })),
  ];
}

/** What can be seen to be amiss before anything is sent, in the shape of what the server refuses. */
function amiss({ grade, mounts, runs }) {
  const errors = [
    !grade && { field: 'grade', found: 'nothing', expected: 'one of the five', mend: 'say how you know' },
    !mounts && !runs && {
      field: 'mounts', found: 'not tried, and not run', expected: 'an answer to at least one of the two questions',
      mend: 'say whether it went on, or how the engine ran',
    },
    grade === 'trial-fitted' && runs && {
      field: 'grade', found: 'I put it on, no more', expected: 'a run under load: a trial fit says nothing about how the engine runs',
      mend: 'say “It ran under load” here, with the hours, or leave “not run” below',
    },
  ].filter(Boolean);
  return errors.length ? { type: '', title: 'Something is missing', errors } : null;
}

const isTaken = problem => problem.errors.some(({ field, reason }) => /^rows\[\d+\]\.(evidence|finding)$/.test(field) && /already stands/.test(reason ?? ''));

/** The faults of rows by table and column, each once: two findings of one form have the same cells. */
function byColumn(problem, rows) {
  const named = problem.errors.map(error => ({ ...error, field: error.field.replace(/^rows\[(\d+)\]/, (_, index) => rows[index].table) }));
  const isFirst = ({ field, found }, index) => named.findIndex(other => other.field === field && other.found === found) === index;
  return { ...problem, errors: named.filter(isFirst) };
}

async function store(texts, note, asked) {
  const many = [texts.mounts, texts.runs].filter(Boolean).length;
  for (let tries = 1; ; tries++) {
    const [evidence, findings] = await Promise.all([
      nextCodes(asked.family, 'evidence', 'evidence', 'ev', 1), nextCodes(asked.family, 'findings', 'finding', 'fi', many),
    ]);
    const rows = rowsOf(texts, { who: note.who, asked }, evidence, findings);
    try {
      return { ...await write(place(asked.family, 'changes'), { body: { rows }, note }), findings };
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      if (!isTaken(error.problem) || tries === mostTries) throw new Refusal(byColumn(error.problem, rows)); // else somebody was quicker with that code
    }
  }
}

/** In no book: the part comes first, and what is typed here waits. */
function unknownPart({ asked }, family, leave) {
  if (asked.part) return null;
  if (asked.number === undefined) {
    return el('p', { class: 'notice' }, 'Which of the parts that can be there was it? Ask with its number, then record it here.');
  }

  const kind = family?.positions.find(one => one.position === asked.position)?.kind;
  const href = `${address('record.html', { book: asked.family, table: 'parts', part: asked.number, kind })}&new`;
  return el('div', { class: 'notice' },
    el('p', null, el('span', { class: 'number' }, asked.number), ' is in no book, and a finding needs its part. ',
      'What you type here is kept meanwhile, in this tab.'),
    el('p', null, el('a', { class: 'button', href, onclick: leave }, 'Add the part to the book first')));
}

/** Neighbours of the question that the finding will name. */
function along(asked, family) {
  const each = asked.with.map((text, index) => {
    const [position, ...part] = text.split('=');
    return [index ? ' and ' : '', part.join('=') === 'none' ? 'nothing' : partLink(part.join('=')), ` as ${positionName(family, position)}`];
  });
  return each.length === 0 ? null : el('p', { class: 'ask' }, 'It will say that it was tried with ', each, '.');
}

/** The form. `changed(answer, told)` shows the answer as it is afterwards. */
export function findingForm(answer, family, { changed }) {
  const { asked } = answer;
  const draftName = `${location.search} finding`;
  const fields = questionsFor(answer);
  const note = signature({ why: 'Why you record it' });
  const first = fields.read();
  const isChanged = () => !form.dataset.done && JSON.stringify(fields.read()) !== JSON.stringify(first);
  const draft = draftOf(draftName, { isChanged, read: () => ({ texts: fields.read(), why: note.why.value }) });
  const blocked = unknownPart(answer, family, () => draft.end());
  const button = el('button', { disabled: Boolean(blocked) }, 'Record it');
  const form = el('form', { novalidate: true, 'aria-label': 'What you found' },
    blocked, along(asked, family), el('div', { class: 'cells' }, fields.cells), el('div', { class: 'cells signature' }, note.cells),
    el('p', { class: 'actions' }, button));

  function refuse(problem) {
    if (problem.status === 401) note.askForToken();
    const summary = faultSummary(form, problem, explain);
    summary.append(el('p', null, 'Nothing was stored, and nothing you typed is lost.'));
    form.before(summary);
    summary.focus();
    summary.scrollIntoView({ block: 'nearest' });
  }

  async function save() {
    clearFaults(form);
    form.parentElement.querySelector('.faults')?.remove();
    const texts = fields.read();
    const wrong = amiss(texts);
    if (wrong) return refuse(wrong);
    button.disabled = true;
    try {
      const done = await store(texts, note.read(), asked);
      form.dataset.done = 'yes';
      draft.forget();
      draft.end();
      const now = await ask(answer.permalink).catch(() => null);
      changed(now ?? answer, whatChanged(answer, now, done));
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      refuse(error.problem);
    } finally {
      button.disabled = false;
    }
  }

  form.addEventListener('submit', event => {
    event.preventDefault();
    save();
  });
  form.addEventListener('input', () => draft.keep());
  const before = findDraft(draftName);
  const offer = before && draftOffer(before, [], {
    forget: () => forgetDraft(draftName),
    take() {
      fields.write(before.texts);
      note.why.value = before.why ?? '';
      draft.keep();
      fields.focus();
    },
  });
  return el('div', { class: 'recording-form' }, offer, form);
}
