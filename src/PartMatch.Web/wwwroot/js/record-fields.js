// Columns of a table as fields of a form, and rows as the texts in them. A number and its unit are one text: "86.5 mm".

import { columnHint, columnName } from './record-words.js';

// Cells that are in the unit of their row. The server takes a unit typed into any of them.
const inRowUnit = ['value', 'minus', 'plus', 'uncertainty', 'min', 'max', 'from', 'to', 'allowance'];
const ownUnits = { x: 'xUnit', y: 'yUnit', whenValue: 'whenUnit', thenValue: 'thenUnit', output: 'outputUnit' };
const featureColumns = {
  value: 'feature', minus: 'feature', plus: 'feature', uncertainty: 'feature', min: 'feature', max: 'feature', allowance: 'feature',
  whenValue: 'whenFeature', thenValue: 'thenFeature',
};
const kindColumns = {
  feature: ['kind', 'part', 'position', 'item'], curve: ['part'], shows: ['kind'], measureFeature: ['measurePosition'], leftFeature: ['leftPosition'],
  rightFeature: ['rightPosition'], whenFeature: ['whenPosition'], thenFeature: ['thenPosition'],
};
const long = ['note', 'how', 'source', 'retractedWhy', 'condition', 'caption', 'text'];

/** The unit column of a cell's column; null where it has none. */
function unitColumn(name, names) {
  if (ownUnits[name] && names.has(ownUnits[name])) return ownUnits[name];
  return inRowUnit.includes(name) && names.has('unit') ? 'unit' : null;
}

/**
 * The fields of a table in the order of its columns:
 * `{name, label, hint, required, isKey, list, refers, oneOf, allowsNone, isLong, unit, codes, feature, kindFrom}`.
 * `unit` is the column its unit goes to, `codes` the columns whose faults are told here, `feature` the column that says which feature it is a value of,
 * `kindFrom` the column that tells the kind whose features it may name.
 */
export function fieldsOf(table, columns) {
  const names = new Set(columns.map(column => column.column));
  const units = new Set(columns.map(column => unitColumn(column.column, names)).filter(Boolean));
  const told = new Set();
  return columns.filter(column => !units.has(column.column)).map(column => {
    const unit = unitColumn(column.column, names);
    const codes = unit && !told.has(unit) ? [column.column, unit] : [column.column];
    if (unit) told.add(unit);
    const kindColumn = kindColumns[column.column]?.find(name => names.has(name));
    return {
      name: column.column, label: columnName(table, column.column), hint: columnHint(table, column), required: column.required, isKey: column.key,
      list: column.list, refers: column.refers ?? null, oneOf: column.oneOf ?? null, allowsNone: /or none/.test(column.expected),
      isLong: long.includes(column.column), unit, codes, feature: names.has(featureColumns[column.column]) ? featureColumns[column.column] : null,
      kindFrom: table === 'features' ? null : kindColumn ?? null, // there the feature is being named for the first time
    };
  });
}

const isNumber = text => /^-?\d+(\.\d+)?$/.test(text);

// A plain ratio has the unit 1, which nobody writes behind a number.
const shown = (cell, unit) => (unit && unit !== '1' && isNumber(cell) ? `${cell} ${unit}` : cell);

/** The texts of a row, by field. */
export function textsOf(fields, row) {
  return Object.fromEntries(fields.map(field => [field.name, shown(row[field.name] ?? '', field.unit ? row[field.unit] : null)]));
}

/** Number and unit of a text; null where that is for the server to read. */
function split(text) {
  const [, number, unit, per] = /^(-?\d+(?:\.\d+)?)(?: *([^\d\s.,]\S*)| +(1(?:\/\S+)?))?$/.exec(text) ?? [];
  return number === undefined ? null : { number, unit: unit ?? per ?? null };
}

/** The cells of one unit, where all numbers are in one and it may be split from them here. */
function splitGroup(texts, names, unit, mayTake, bare) {
  const parts = names.filter(name => texts[name] !== '').map(name => [name, split(texts[name])]);
  if (parts.length === 0 || parts.some(([, part]) => part === null)) return {};
  if (!bare && parts[0][0] === 'value' && !parts[0][1].unit) return {}; // whose unit it is, is for the server to ask
  const units = [...new Set(parts.map(([, part]) => part.unit).filter(Boolean))];
  const one = units.length === 0 ? bare : units.length === 1 && mayTake(units[0]) ? units[0] : null;
  return one ? { ...Object.fromEntries(parts.map(([name, part]) => [name, part.number])), [unit]: one } : {};
}

/**
 * The row that the texts of a form make; what is empty is left out. A number in a unit that is expected there is split from it here. Anything else goes as
 * it was typed: the server reads it, or says what is wrong with it. `expected(field)` gives the units that are expected.
 */
export function rowOf(fields, texts, expected = () => []) {
  const row = Object.fromEntries(fields.filter(field => texts[field.name] !== '').map(field => [field.name, texts[field.name]]));
  for (const unit of new Set(fields.map(field => field.unit).filter(Boolean))) {
    const group = fields.filter(field => field.unit === unit);
    const units = expected(group[0]);
    Object.assign(row, splitGroup(texts, group.map(field => field.name), unit, one => units.includes(one), units.includes('1') ? '1' : null));
  }
  return row;
}

/** Which fields differ between two sets of texts. */
export const differing = (fields, one, other) => fields.filter(field => (one[field.name] ?? '') !== (other[field.name] ?? ''));
