// Judging a pair: the same part, a trap or harmless, with the evidence for it; or changing what was judged before.

import { rowWith } from './book-rows.js';
import { changeForm } from './change-form.js';
import { cell, choices, evidenceChoice, typedInput } from './evidence-choice.js';
import { address, el, sentence, ways } from './format.js';

const judgements = {
  'trap': 'a trap: it can be taken for the other, and does harm', 'harmless': 'harmless: taking the one for the other costs nothing',
  'same-part': 'the same part under two numbers',
};

/** The judgement of the two, in whatever order it stands, or null. */
async function judged(book, one, other) {
  return await rowWith(book, 'pairs', { partA: one, partB: other }) ?? await rowWith(book, 'pairs', { partA: other, partB: one });
}

/** The form; what is judged stands in the book of the family whose list is shown. */
export async function judging(book, pair, { status, cancel, saved }) {
  const [one, other] = [pair.a.part, pair.b.part].toSorted();
  let present = await judged(book, one, other);
  const row = present?.row ?? { partA: one, partB: other };
  const judgement = choices('judgement', [['', 'Choose'], ...Object.entries(judgements).map(([code, text]) => [code, sentence(text)])], row.judgement ?? '');
  const note = typedInput('note', { value: row.note ?? '', spellcheck: 'true' });
  const evidence = evidenceChoice(book, { id: 'judge-source', speaksOf: 'number', what: '', recorded: row.evidence ?? '' });
  const form = changeForm({
    book, name: `pair ${one} ${other}`, label: `${pair.a.number} and ${pair.b.number}`, button: present ? 'Change the judgement' : 'Judge them',
    status, cancel, saved,
    ask: present ? `Judged before as ${judgements[row.judgement]}.` : 'Nobody has judged them yet. Tell them apart first, then say what you found.',
    cells: [cell('judge-judgement', 'What was found', judgement), cell('judge-note', 'Note', note, 'How one tells them apart, and what the mix-up does.'),
      ...evidence.cells],
    adopt: now => { present = now; },
    async gather(set, said) {
      const { code, control } = await evidence.add(set, said);
      const cells = { partA: row.partA, partB: row.partB, judgement: judgement.value, evidence: code, note: note.value.trim() };
      const seen = { table: 'pairs', key: present?.key, version: present?.version };
      set.change(seen, cells, { partA: judgement, partB: judgement, judgement, evidence: control, note });
    },
  });
  return {
    node: el('section', { class: 'judge', 'aria-labelledby': 'judge-title' }, el('h2', { id: 'judge-title' }, `${pair.a.number} and ${pair.b.number}`),
      present ? ways(['The record', address('record.html', { book, table: 'pairs', key: present.key })],
        ['History', address('history.html', { book, table: 'pairs', key: present.key })]) : null,
      form.node),
    focus: form.focus,
  };
}
