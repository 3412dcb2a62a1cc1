// Recording an item: which part it is taken to be, how it was found, and what was read on it, all as one change.

import { nextCode } from './book-rows.js';
import { changeForm, readTexts, writeTexts } from './change-form.js';
import { today } from './editor.js';
import { cell, choices, evidenceChoice, typedInput } from './evidence-choice.js';
import { featureFields, featuresOfKind } from './feature-fields.js';
import { el, sentence } from './format.js';
import { findNamed, proposals } from './record-references.js';
import { codeWords } from './record-words.js';

const origins = ['donor', 'yard-pull', 'arrival', 'bench-stock'];

/** Puts readings into a change; `about` are the cells that all of them share, with their controls. */
export function putReadings(set, readings, item, { cells, controls }) {
  for (const reading of readings) set.add('readings', { item, ...reading.cells, ...cells }, { ...reading.controls, ...controls });
}

/** The form; `saved(code, change)` once the item is stored. */
export function newItem(book, { status, cancel, saved }) {
  const { list, feed } = proposals('list-item-part', book, 'part');
  const part = typedInput('part', { class: 'typed', list: list.id, 'aria-required': 'true' });
  const origin = choices('origin', [['', 'Not recorded'], ...origins.map(code => [code, sentence(codeWords('origin', code))])], '');
  const condition = typedInput('condition', {});
  const note = typedInput('note', {});
  const readOn = typedInput('readOn', { value: today() });
  const evidence = evidenceChoice(book, { id: 'item-source', speaksOf: 'item', what: 'bench sheet', isGraded: false });
  const meaning = el('p', { class: 'hint meaning', role: 'status' });
  const readings = el('div', { class: 'features' });
  let fields = null;
  let code = null;

  async function showFeatures() {
    const typed = part.value.trim();
    const found = typed ? await findNamed(book, 'part', typed) : null;
    if (typed !== part.value.trim()) return;
    meaning.textContent = found ? found.name : typed ? `${typed} is in no book that this family can see: write maker:number, or record the part first.` : '';
    const kept = readTexts(form.form); // what was read stays where the other kind has the same feature
    fields = found ? featureFields(await featuresOfKind(book, found.row.kind, found.row.part), { id: 'new-item', hasInstrument: true }) : null;
    readings.replaceChildren(...(fields ? [el('h3', { class: 'ask' }, 'What was read on it, the quickest first'),
      el('p', { class: 'ask quiet' }, 'Leave empty what was not read. A value with its unit, such as 44.981 mm or 1.771 in.'), fields.node] : []));
    writeTexts(readings.querySelectorAll('input, select'), kept);
  }

  part.addEventListener('change', showFeatures);
  for (const type of ['focus', 'input']) part.addEventListener(type, () => feed(part.value.trim()));
  const partCell = cell('item-part', 'Which part it is taken to be', part, 'maker:number as it is written on it.');
  partCell.append(meaning, list);
  const form = changeForm({
    book, name: 'item', label: 'A new item', button: 'Record it', status, cancel,
    ask: 'What is read on one item says nothing of other parts of its number until somebody lets it.',
    cells: [partCell, cell('item-origin', 'Where it came from', origin), cell('item-condition', 'Condition as found', condition, 'In words: what can be seen and felt.'),
      cell('item-note', 'Note', note, 'From which engine, where it lies.'), ...evidence.cells, cell('item-read-on', 'Read on', readOn), readings],
    restore: async texts => { part.value = texts.part ?? ''; await showFeatures(); },
    async gather(set, said) {
      code = await nextCode(book, 'items', 'item', 'it');
      const { code: source, control } = await evidence.add(set, said);
      const cells = { part: part.value.trim(), origin: origin.value, condition: condition.value.trim(), note: note.value.trim() };
      set.add('items', { item: code, ...cells, evidence: source },
        { item: part, part, origin, condition, evidence: control, note });
      putReadings(set, fields?.read() ?? [], code, { cells: { readOn: readOn.value.trim(), evidence: source }, controls: { readOn, evidence: control } });
    },
    saved: answer => saved(code, answer.change),
  });
  return form;
}
