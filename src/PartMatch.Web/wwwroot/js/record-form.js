// The form of one row: a control for each field, fed with proposals and with what codes stand for.

import { address, el, plain, sentence } from './format.js';
import { changing, chosen, lines, ticked, typed } from './record-controls.js';
import { rowOf } from './record-fields.js';
import { allNamed, featuresFor, findNamed, fixedList, proposals, tableOf, usedWords } from './record-references.js';

const proposed = { engine: 'property', positions: 'group' };
const sets = ['one-of', 'covers'];
const values = ['value', 'whenValue', 'thenValue'];
const spread = ['minus', 'plus', 'uncertainty'];

/** What a code stands for, and the way to it. */
const named = (row, refers, code) => [
  `${row.name || code} `,
  el('a', { href: address('record.html', { book: row.book, table: tableOf(refers), key: row.key }) }, 'open', el('span', { class: 'unseen' }, ` ${code}`)),
];

/** A field that names rows of another table: proposals as one types, and below it what the code stands for. */
function referring(field, book, lists) {
  const id = `list-${field.name}`;
  const { list, feed } = proposals(id, book, field.refers, field.allowsNone ? [{ code: 'none', name: 'nothing sits there' }] : []);
  lists.push(list);
  const control = field.list ? lines(field, { list: id }) : typed(field, { list: id });
  for (const type of ['focusin', 'input']) control.node.addEventListener(type, ({ target }) => target.matches('input') && feed(target.value.trim()));
  if (!field.list) {
    control.tell = async () => {
      const code = control.read();
      const row = code === 'none' ? null : await findNamed(book, field.refers, code);
      if (code === control.read()) control.node.querySelector('.meaning').replaceChildren(...(row ? named(row, field.refers, code) : []));
    };
  }

  return control;
}

async function controlOf(field, { table, book, lists }) {
  if (field.list && field.oneOf) return ticked(field, field.oneOf.map(code => ({ code })));
  if (field.list && field.refers === 'variant') return ticked(field, await allNamed(book, 'variant'));
  if (field.oneOf) return chosen(field, field.oneOf);
  if (field.refers) return referring(field, book, lists);
  if (field.kindFrom) {
    lists.push(el('datalist', { id: `list-${field.name}` }));
    return (field.list ? lines : typed)(field, { list: `list-${field.name}` });
  }

  if (field.list) return lines(field);

  if (proposed[table] === field.name) {
    lists.push(fixedList(`list-${field.name}`, await usedWords(book, table, field.name)));
    return typed(field, { list: `list-${field.name}` });
  }

  return typed(field);
}

const measures = {
  quantity: feature => (feature.unit === '1' ? 'A plain ratio, such as 10.5.' : `With its unit, such as 86.5 mm or 3.40 in. It is kept in ${feature.unit}.`),
  count: () => 'A whole number.', curve: () => 'Its points belong to the curves.',
};

/** Fits the value's control to its feature: a list of words is chosen from, a measure is typed. */
function fitValue(field, control, feature, relation) {
  const isWord = ['choice', 'choices'].includes(feature?.type);
  const isSet = isWord && (feature.type === 'choices' || sets.includes(relation));
  const shape = isWord ? `${feature.kind} ${feature.feature} ${isSet}` : 'typed';
  const hint = feature ? measures[feature.type]?.(feature) ?? '' : field.hint;
  if (control.shape !== shape) {
    const words = { ...field, hint };
    const codes = feature?.choices ?? [];
    control.become(!isWord ? typed(words) : isSet ? ticked(words, codes.map(code => ({ code }))) : chosen(words, codes, plain));
    control.shape = shape;
  }

  control.hint(hint);
}

/**
 * Builds the fields of a row. Gives `{cells, lists, read, write, row, focus, settle}`: `read` and `write` all texts, `row` what is sent,
 * `recorded` is the row as it is in the base;
 * `settle` brings proposals and meanings in line with the texts.
 */
export async function rowForm({ fields, table, book, texts, recorded = {} }) {
  const lists = [];
  async function build(field) {
    const isMultiline = (texts[field.name] ?? '').includes('\n');
    const control = isMultiline ? typed(field, { text: texts[field.name] }) : await controlOf(field, { table, book, lists });
    return [field.name, values.includes(field.name) && field.feature ? Object.assign(changing(field, control), { shape: 'typed' }) : control];
  }

  const controls = Object.fromEntries(await Promise.all(fields.map(build)));
  const known = {}; // the feature that each feature column names, as far as it is known
  const text = name => controls[name]?.read() ?? '';

  async function settleFeature(field) {
    const offered = await featuresFor(book, field.kindFrom, text(field.kindFrom));
    const own = offered.filter(one => (field.name === 'curve' ? one.type === 'curve' : table !== 'values' || one.type !== 'curve'));
    const entries = own.map(one => el('option', { value: one.feature, label: `${one.feature} – ${one.name}` }));
    lists.find(list => list.id === `list-${field.name}`)?.replaceChildren(...entries);
    known[field.name] = offered.find(one => one.feature === text(field.name)) ?? null;
    const meaning = controls[field.name].node.querySelector('.meaning');
    if (meaning) meaning.textContent = known[field.name] ? sentence(known[field.name].name) : '';
  }

  async function settle() {
    await Promise.all([
      ...fields.filter(field => field.kindFrom).map(settleFeature), ...Object.values(controls).map(control => control.tell?.()),
    ]);
    for (const field of fields.filter(one => one.feature)) {
      const feature = known[field.feature];
      if (controls[field.name].become) fitValue(field, controls[field.name], feature, text('relation') || text(field.name.replace('Value', 'Relation')));
      if (spread.includes(field.name)) controls[field.name].node.hidden = Boolean(feature) && feature.type !== 'quantity' && text(field.name) === '';
    }
  }

  const write = given => fields.forEach(field => controls[field.name].write(given[field.name] ?? ''));
  write(texts);
  await settle();
  const read = () => Object.fromEntries(fields.map(field => [field.name, text(field.name)]));
  return {
    get cells() { return fields.map(field => controls[field.name].node); },
    lists, read, write, settle,
    row: () => rowOf(fields, read(), field => [recorded[field.unit], known[field.feature]?.unit].filter(Boolean)),
    focus: name => controls[name]?.input?.focus(),
    set: (name, value) => controls[name]?.write(value),
  };
}
