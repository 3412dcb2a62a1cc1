// Fields for what can be read on a part of one kind: each feature with its cheapest check, those that cost least time first.

import { rowsWith } from './book-rows.js';
import { cell, typedInput } from './evidence-choice.js';
import { el, plain, say, sentence } from './format.js';

const isReadable = feature => feature.type !== 'curve';

/** The row of the limit that holds: that of the part where there is one, else that of the whole kind. */
const holding = (limits, part) => (limits.find(({ row }) => row.part === part) ?? limits.find(({ row }) => row.part === undefined))?.row ?? null;

/**
 * The features of a kind, as `{feature, name, type, unit, choices, checks, limit}`; checks and features by the minutes of the cheapest. `limit` is the row of
 * the service limit that holds for the part, where one is recorded.
 */
export async function featuresOfKind(book, kind, part) {
  const [features, checks, limits] = await Promise.all(['features', 'checks', 'limits'].map(table => rowsWith(book, table, { kind }, { used: true })));
  const minutes = check => Number(check?.minutes ?? Infinity);
  const known = features.map(({ row }) => ({
    ...row, choices: row.choices?.split('|') ?? [], limit: holding(limits.filter(limit => limit.row.feature === row.feature), part),
    checks: checks.map(check => check.row).filter(check => check.feature === row.feature).toSorted((a, b) => minutes(a) - minutes(b)),
  }));
  return known.filter(isReadable).toSorted((a, b) => minutes(a.checks[0]) - minutes(b.checks[0]) || a.name.localeCompare(b.name, 'en'));
}

const within = ({ uncertainty, unit }) => (uncertainty ? `, good to ± ${uncertainty} ${unit}` : '');

const checkText = check => `${sentence(say('method', check.method))}, ${check.minutes} min${within(check)}${check.how ? `: ${check.how}` : ''}.`;

/** The check with the least uncertainty, where that is finer than the cheapest. */
function finest([cheapest, ...others]) {
  const best = others.filter(check => check.unit === cheapest.unit && check.uncertainty).toSorted((a, b) => a.uncertainty - b.uncertainty)[0];
  return best && Number(best.uncertainty) < Number(cheapest.uncertainty) ? best : null;
}

function checksText(checks) {
  if (checks.length === 0) return 'No check is recorded.';
  const finer = finest(checks);
  return [checkText(checks[0]), finer ? ` Finer: ${checkText(finer)}` : ''];
}

const limitText = ({ min, max, unit, part }) =>
  `Service limit${part ? ' of this number' : ''}: ${[min ? `at least ${min}` : '', max ? `at most ${max}` : ''].filter(Boolean).join(', ')}${unit ? ` ${unit}` : ''}.`;

const shapes = {
  quantity: ({ unit }) => (unit === '1' ? 'a plain ratio' : `with its unit (${unit})`), count: () => 'a whole number', choice: () => '',
};

function valueControl(feature, id) {
  const name = `${feature.feature}-value`;
  if (feature.type === 'choice') {
    const words = feature.choices.map(code => el('option', { value: code }, sentence(plain(code))));
    const control = el('select', { name, id }, el('option', { value: '' }, 'Not read'), words);
    return { node: el('div', { class: 'cell' }, control), control, read: () => control.value };
  }

  if (feature.type === 'choices') {
    const tick = code => el('input', { type: 'checkbox', name, value: code, id: `${id}-${code}` });
    const box = code => el('label', { class: 'choice' }, tick(code), sentence(plain(code)));
    const group = el('fieldset', { class: 'cell', id }, el('legend', null, 'What it has'), el('div', { class: 'choices' }, feature.choices.map(box)));
    return { node: group, control: group, read: () => [...group.querySelectorAll('input:checked')].map(one => one.value).toSorted().join('|') };
  }

  const control = typedInput(name, { class: 'typed', id });
  return { node: el('div', { class: 'cell' }, control), control, read: () => control.value.trim() };
}

const unseen = text => el('span', { class: 'unseen' }, text);

/** The reading is as good as the cheapest check, as long as nobody says otherwise and both are in one unit. */
function proposeUncertainty(value, uncertainty, check) {
  if (!check?.uncertainty) return;
  value.addEventListener('input', () => {
    const unit = /[\d.\s](?<unit>[^\d.\s].*)$/.exec(value.value.trim())?.groups.unit;
    if (unit === check.unit && uncertainty.value === '') uncertainty.value = `${check.uncertainty} ${check.unit}`;
  });
}

/** One feature: value, how good it is, with what. */
function oneFeature(feature, { id, hasInstrument, known }) {
  const own = `${id}-${feature.feature}`;
  const [check] = feature.checks;
  const value = valueControl(feature, `${own}-value`);
  if (value.control.matches('fieldset')) value.control.querySelector('legend').prepend(unseen(`${feature.name}: `));
  else value.node.prepend(el('label', { for: `${own}-value` }, unseen(`${feature.name}: `), 'Read', el('span', { class: 'hint' }, ` ${shapes[feature.type](feature)}`)));
  const uncertainty = feature.type === 'quantity' ? typedInput(`${feature.feature}-uncertainty`, { class: 'typed' }) : null;
  const instrument = hasInstrument ? typedInput(`${feature.feature}-instrument`) : null;
  const labelled = (part, control, text) => {
    const node = cell(`${own}-${part}`, '', control);
    node.querySelector('label').append(unseen(`${feature.name}: `), text);
    return node;
  };
  if (uncertainty) proposeUncertainty(value.control, uncertainty, check);
  const node = el('div', { class: 'feature', role: 'group', 'aria-label': sentence(feature.name) },
    el('div', { class: 'feature-name' }, el('strong', null, sentence(feature.name)),
      el('p', { class: 'small quiet' }, checksText(feature.checks)),
      feature.limit ? el('p', { class: 'small' }, limitText(feature.limit)) : null, known ? el('p', { class: 'small' }, known) : null),
    el('div', { class: 'feature-cells' }, value.node, uncertainty ? labelled('uncertainty', uncertainty, '± how good it is') : null,
      instrument ? labelled('instrument', instrument, 'With what') : null));
  return {
    node, feature,
    /** The cells of what was read, and their controls; null when nothing was. */
    read() {
      const text = value.read();
      if (text === '') return null;
      const unit = feature.unit === '1' && /^-?[\d.]+$/.test(text) ? '1' : undefined; // a plain ratio has a unit that nobody writes
      return {
        cells: { feature: feature.feature, value: text, unit, uncertainty: uncertainty?.value.trim(), instrument: instrument?.value.trim() },
        controls: { value: value.control, unit: value.control, feature: value.control, uncertainty, instrument },
      };
    },
  };
}

/**
 * Fields for these features. `known(feature)` gives what is recorded already, in words or nodes.
 * `read()` lists what was typed, each as `{cells, controls}`.
 */
export function featureFields(features, { id, hasInstrument = false, known = () => null }) {
  const fields = features.map(feature => oneFeature(feature, { id, hasInstrument, known: known(feature) }));
  return {
    node: el('div', { class: 'features' }, fields.map(field => field.node)),
    read: () => fields.map(field => field.read()).filter(Boolean),
  };
}
