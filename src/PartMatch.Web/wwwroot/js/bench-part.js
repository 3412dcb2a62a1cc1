// The part that sits at a position: one that a book has, or a new one; and the values that were measured on it.

import { ask } from './api.js';
import { rowWith } from './book-rows.js';
import { missing, readTexts, writeTexts } from './change-form.js';
import { cell, choices, typedInput } from './evidence-choice.js';
import { featureFields, featuresOfKind } from './feature-fields.js';
import { el, plain } from './format.js';
import { proposals } from './record-references.js';

/** What the books have of a number: one part, several that it can mean, or none. */
async function lookUp(number) {
  return number ? (await ask(`/api/parts/${encodeURIComponent(number)}`)).parts : [];
}

/**
 * Fields for the part at a position. Where one is fitted already it is chosen from those, and only measured.
 * `put(set, row, control)` adds what is needed: maker, part, fitment, values.
 */
export async function benchPart(book, place, { fitted, quantity }) {
  const { list, feed } = proposals('list-bench-part', book, 'part');
  const isFitted = fitted.length > 0;
  const part = isFitted ? choices('part', fitted.map(one => [one.part, `${one.part} ${one.name}`]), fitted[0].part)
    : typedInput('part', { class: 'typed', list: list.id, 'aria-required': 'true' });
  const name = typedInput('partName', {});
  const makerName = typedInput('makerName', {});
  const pieces = typedInput('quantity', { inputmode: 'numeric', value: quantity });
  const meaning = el('p', { class: 'hint meaning', role: 'status' });
  const partCell = cell('bench-part', 'Part', part, isFitted ? '' : 'maker:number as it is written on it.');
  partCell.append(meaning, list);
  const [nameCell, makerCell, piecesCell] = [
    cell('bench-name', 'Its name', name, 'No book has this number yet: what people call it.'),
    cell('bench-maker', 'Name of the maker', makerName, 'No book has this maker yet.'),
    cell('bench-quantity', 'Pieces on each engine', pieces, 'Digits only.'),
  ];
  nameCell.hidden = makerCell.hidden = true;
  piecesCell.hidden = isFitted;
  const values = el('div', { class: 'features' });
  let fields = null;
  let state = { part: null, isNew: false, isNewMaker: false };

  async function show() {
    const typed = part.value.trim();
    const parts = await lookUp(typed);
    const features = await featuresOfKind(book, place.kind, parts[0]?.part);
    if (typed !== part.value.trim()) return;
    const [one] = parts;
    const maker = typed.split(':')[0];
    const isNew = parts.length === 0 && typed.includes(':');
    const isNewMaker = isNew && !(await rowWith(book, 'makers', { maker }, { used: true }));
    state = { typed, part: parts.length === 1 ? one.part : typed, isNew, isNewMaker };
    nameCell.hidden = !isNew;
    makerCell.hidden = !isNewMaker;
    meaning.textContent = parts.length > 1 ? `It can mean ${parts.map(each => each.part).join(' or ')}: write which.`
      : one ? `${one.name}${one.kind === place.kind ? '' : `: a ${plain(one.kind)}, and here sits a ${plain(place.kind)}`}` : isNew ? 'A new number.' : '';
    const kept = readTexts({ elements: values.querySelectorAll('input, select') });
    const known = Object.fromEntries((one?.values ?? []).map(value => [value.feature, value.known.text]));
    fields = featureFields(features, { id: 'bench', known: ({ feature }) => (known[feature] ? `Recorded: ${plain(known[feature])}.` : null) });
    values.replaceChildren(
      el('p', { class: 'ask quiet' }, 'The quickest first. A value with its unit, such as 44.98 mm; leave empty what was not read.'), fields.node);
    writeTexts(values.querySelectorAll('input, select'), kept);
  }

  part.addEventListener('change', show);
  if (!isFitted) for (const type of ['focus', 'input']) part.addEventListener(type, () => feed(part.value.trim()));
  await show();

  async function put(set, row, control) {
    if (state.typed !== part.value.trim()) await show();
    const measured = fields.read();
    if (isFitted && measured.length === 0) throw missing('part', 'at least one value', 'type a value at its feature');
    const told = { evidence: control };
    const { evidence } = row;
    if (state.isNewMaker) set.add('makers', { maker: state.part.split(':')[0], name: makerName.value.trim() }, { maker: part, name: makerName });
    if (state.isNew) set.add('parts', { part: state.part, kind: place.kind, name: name.value.trim(), evidence }, { part, name, ...told });
    if (!isFitted) set.add('fitments', { ...row, part: state.part, quantity: pieces.value.trim() }, { part, quantity: pieces, ...told });
    for (const one of measured) set.add('values', { part: state.part, ...one.cells, evidence }, { part, ...one.controls, ...told });
  }

  return { cells: [partCell, nameCell, makerCell, piecesCell, values], put, restore: async texts => { part.value = texts.part ?? ''; await show(); } };
}
