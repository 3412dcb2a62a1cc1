// The rows that would come in with another state of a book: a table for each file, folded.

import { count, el, ruled } from './format.js';
import { cellWords, columnName, tableName } from './record-words.js';

/** The columns that any of the rows has, in the order of the file: each row has its own in that order. */
function columnsOf(rows) {
  const columns = [];
  for (const row of rows) {
    let place = 0;
    for (const column of Object.keys(row)) {
      if (!columns.includes(column)) columns.splice(place, 0, column);
      place = columns.indexOf(column) + 1;
    }
  }

  return columns;
}

function table(name, rows) {
  const columns = columnsOf(rows);
  return ruled(`What would be added to ${tableName(name)}`, columns.map(column => columnName(name, column)),
    rows.map(row => columns.map(column => (row[column] === undefined ? '–' : cellWords(column, row[column])))), { className: 'restack' });
}

function folded({ file, added, rows }) {
  const name = file.replace(/\.csv$/, '');
  const shown = rows.filter(row => !row.before).map(row => row.after);
  const place = el('div');
  const fill = () => { if (!place.hasChildNodes()) place.append(table(name, shown)); };
  const rest = shown.length < added ? `, the first ${shown.length} of them here` : '';
  return el('details', { class: 'rows', ontoggle: fill }, el('summary', null, `${tableName(name)}: ${count(added, 'row')}${rest}`), place);
}

/** `files` as the merge tells them; null where no row would be added. */
export function incomingRows(files) {
  const adding = files.filter(file => file.added > 0);
  return adding.length === 0 ? null : el('div', { class: 'incoming' }, adding.map(folded));
}
