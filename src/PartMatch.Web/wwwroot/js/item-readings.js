// Readings of an item that is recorded: adding what was not read yet, and changing one.

import { rowWith } from './book-rows.js';
import { changeForm, missing, writeTexts } from './change-form.js';
import { today } from './editor.js';
import { cell, evidenceChoice, typedInput } from './evidence-choice.js';
import { featureFields, featuresOfKind } from './feature-fields.js';
import { putReadings } from './item-new.js';

/** Adds readings of the features that were not read yet; the quickest first. */
export async function addReadings({ answer, status, cancel, saved }) {
  const { asked, kind, part, check } = answer;
  const read = new Set(check.readings.map(one => one.feature));
  const [features, row] = await Promise.all([featuresOfKind(asked.family, kind, part), rowWith(asked.family, 'items', { item: asked.item })]);
  const fields = featureFields(features.filter(one => !read.has(one.feature)), { id: 'add', hasInstrument: true });
  const readOn = typedInput('readOn', { value: today() });
  const recorded = row?.row.evidence ?? '';
  const evidence = evidenceChoice(asked.family, { id: 'add-source', speaksOf: 'item', what: 'bench sheet', isGraded: false, recorded });
  return changeForm({
    book: asked.family, name: 'readings', label: `Readings of ${asked.item}`, button: 'Add what was read', status, cancel, saved,
    ask: 'Leave empty what was not read. A value with its unit, such as 44.981 mm or 1.771 in.',
    cells: [cell('add-read-on', 'Read on', readOn), ...evidence.cells, fields.node],
    async gather(set, said) {
      const readings = fields.read();
      if (readings.length === 0) throw missing('readOn', 'at least one reading', 'type a value at its feature');
      const { code, control } = await evidence.add(set, said);
      putReadings(set, readings, asked.item, { cells: { readOn: readOn.value.trim(), evidence: code }, controls: { readOn, evidence: control } });
    },
  });
}

const withUnit = (number, unit) => (number && unit && unit !== '1' ? `${number} ${unit}` : number ?? '');

/** Changes one reading, as long as nobody else has meanwhile. */
export async function changeReading(feature, { answer, status, cancel, saved }) {
  const { asked, kind, part } = answer;
  const [features, seen] = await Promise.all([featuresOfKind(asked.family, kind, part), rowWith(asked.family, 'readings', { item: asked.item, feature })]);
  const { row } = seen;
  let present = seen;
  const fields = featureFields(features.filter(one => one.feature === feature), { id: 'change', hasInstrument: true });
  const readOn = typedInput('readOn', { value: row.readOn ?? '' });
  const note = typedInput('note', { value: row.note ?? '' });
  const evidence = evidenceChoice(asked.family, { id: 'change-source', speaksOf: 'item', what: 'bench sheet', isGraded: false, recorded: row.evidence ?? '' });
  const form = changeForm({
    book: asked.family, name: `reading ${feature}`, label: `Reading of ${asked.item}`, button: 'Save the reading', status, cancel, saved,
    cells: [fields.node, cell('change-read-on', 'Read on', readOn), cell('change-note', 'Note', note), ...evidence.cells],
    adopt: now => { present = now; },
    async gather(set, said) {
      const [reading] = fields.read();
      if (!reading) throw missing(`${feature}-value`, 'a value', 'or remove the reading on its record');
      const { code, control } = await evidence.add(set, said);
      const cells = { item: asked.item, ...reading.cells, readOn: readOn.value.trim(), note: note.value.trim(), evidence: code };
      set.change({ table: 'readings', key: present?.key, version: present?.version }, cells, { ...reading.controls, readOn, note, evidence: control });
    },
  });
  writeTexts(fields.node.querySelectorAll('input, select'), {
    [`${feature}-value`]: withUnit(row.value, row.unit), [`${feature}-uncertainty`]: withUnit(row.uncertainty, row.unit),
    [`${feature}-instrument`]: row.instrument ?? '',
  });
  form.settle();
  return form;
}
