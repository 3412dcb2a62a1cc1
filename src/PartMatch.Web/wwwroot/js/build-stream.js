// A plan while it is worked out: lines of JSON, each with the best so far and the bound, and at the end the plan.

import { Refusal } from './api.js';
import { el } from './format.js';

/** Each line of a body as it arrives. */
async function* linesOf(body) {
  let rest = '';
  for await (const text of body.pipeThrough(new TextDecoderStream())) {
    const lines = (rest + text).split('\n');
    rest = lines.pop();
    yield* lines.filter(Boolean);
  }
  if (rest.trim()) yield rest;
}

const unfinished = { type: '', title: 'The answer broke off', status: 0,
  errors: [{ field: 'answer', found: 'nothing at the end', expected: 'the answer', mend: 'see that the server still runs, then ask again' }] };

/** The last line of the answer; `told` gets each one before it. A problem as the last line is a Refusal. */
export async function readLines(address, { told, ...options }) {
  let answer;
  try {
    answer = await fetch(address, { ...options, headers: { ...options.headers, Accept: 'application/jsonl' } });
  } catch (error) {
    if (error.name === 'AbortError') throw error;
    throw new Refusal({ ...unfinished, title: 'The server cannot be reached' });
  }

  if (!answer.ok) {
    const isJson = /json/.test(answer.headers.get('Content-Type') ?? '');
    throw new Refusal(isJson ? await answer.json() : { ...unfinished, title: `The server answered ${answer.status} without saying why` });
  }

  let last = null;
  for await (const line of linesOf(answer.body)) {
    const said = JSON.parse(line);
    if (said.asked) last = said;
    else if (said.errors) throw new Refusal(said);
    else told(said);
  }
  if (!last) throw new Refusal(unfinished);
  return last;
}

const digitsOf = currency => new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits;

const amount = (minor, currency) => `${(minor / 10 ** digitsOf(currency)).toFixed(digitsOf(currency))} ${currency}`;

/** How far it has come, by what counts first. */
function progressText({ best, bound }, objective, currency) {
  const found = best !== undefined && best !== null;
  if (objective === 'surest') return found ? 'A plan is found; looking for a surer one.' : 'Nothing found yet.';
  const say = { 'cheapest': value => amount(value, currency), 'soonest': value => `day ${value}`, 'most-kept': value => `${value} parts kept` }[objective];
  const limit = { 'cheapest': 'no plan can cost less than', 'soonest': 'no plan is ready before', 'most-kept': 'no plan can do better than' }[objective];
  return `${found ? `Best so far: ${say(best)}` : 'Nothing found yet'}; ${limit} ${say(bound)}.`;
}

/** What stands there while a plan is worked out; `stop` ends it with the best found. */
export function waiting({ objective, currency, stop }) {
  const far = el('span', null, 'Working it out …');
  const button = el('button', { type: 'button', class: 'plain', onclick: () => { button.disabled = true; far.textContent = 'Stopping …'; stop(); } },
    'Stop, and show the best found');
  return {
    node: el('div', { class: 'solving' }, el('p', { class: 'waiting' }, far), el('p', { class: 'buttons' }, button)),
    told: progress => { if (!button.disabled) far.textContent = progressText(progress, objective, currency); },
  };
}
