// Rows that the tables of a plan share.

/** The head of a group within a table. */
export const groupHead = (name, columns) => ({ class: 'group', cells: [{ cell: name, colspan: columns, 'data-label': null }] });
