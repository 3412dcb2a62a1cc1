// Asks the server. A refusal becomes a Refusal with the problem it sent; a later question of the same asker ends the one before.

/** What the server refused, as RFC 9457 shapes it. */
export class Refusal extends Error {
  constructor(problem) {
    super(problem.title);
    this.problem = problem;
  }
}

const unreachable = { type: '', title: 'The server cannot be reached', status: 0, errors: [{ field: 'address', found: 'no answer', expected: 'an answer of this server', mend: 'see that it still runs, then ask again' }] };

async function send(address, options) {
  try {
    return await fetch(address, options);
  } catch (error) {
    if (error.name === 'AbortError') throw error;
    throw new Refusal(unreachable);
  }
}

/** The JSON of an answer. */
export async function ask(address, options = {}) {
  return readAnswer(await send(address, { ...options, headers: { Accept: 'application/json', ...options.headers } }));
}

async function readAnswer(answer) {
  const isJson = /json/.test(answer.headers.get('Content-Type') ?? '');
  if (answer.ok && isJson) return answer.json();
  throw new Refusal(isJson ? await answer.json() : { type: '', title: `The server answered ${answer.status} without saying why`, status: answer.status, errors: [] });
}

/** As `ask`, where the answer may be a table as well: `{answer}` or, whatever its status, `{table}` as text. */
export async function askTable(address, options = {}) {
  const answer = await send(address, { ...options, headers: { Accept: 'application/json, text/csv', ...options.headers } });
  return /csv/.test(answer.headers.get('Content-Type') ?? '') ? { table: await answer.text() } : { answer: await readAnswer(answer) };
}

/** Asks one question at a time: a new one aborts the one still running, whose promise then never settles an answer. */
export function asker() {
  let running = null;
  return async address => {
    running?.abort();
    const own = running = new AbortController();
    try {
      return await ask(address, { signal: own.signal });
    } finally {
      if (running === own) running = null;
    }
  };
}

/**
 * Reads what belongs to a choice: `(read, show)` shows what was read, unless the choice was made anew meanwhile. What then comes late, an answer or a
 * refusal, is of a choice that nobody sees any more.
 */
export function newest() {
  let last = null;
  return async (read, show) => {
    const own = last = {};
    try {
      const found = await read();
      if (own === last) show(found);
    } catch (error) {
      if (own === last) throw error;
    }
  };
}

const kept = new Map();

/** As `ask`, but each address only once a page. */
export function askOnce(address) {
  if (!kept.has(address)) kept.set(address, ask(address));
  return kept.get(address);
}
