// The tables and columns of a parts book, and the codes in them, in the words of the trade.

import { plain, say } from './format.js';

/** Tables by the question they answer: what each is called, what one row of it is, what it holds. */
export const shelves = [
  ['Parts', {
    'parts': ['Parts', 'part', 'Every number that a maker or supplier gave to a part, and what kind of part it is.'],
    'values': ['Values', 'value', 'What is known of a part: lengths, counts, shapes. One row for each source that says so.'],
    'curves': ['Curves', 'point of a curve', 'Readings over one or two measures, such as delivery over voltage.'],
    'numbers': ['Further numbers', 'further number', 'Casting marks, kit numbers and supplier’s own numbers on or for a part.'],
    'supersessions': ['Newer numbers', 'replacement', 'Which number took the place of which, and whether that works backwards.'],
    'contents': ['Kits and assemblies', 'thing in a kit', 'What is in the box, or on the assembly from the yard.'],
    'pairs': ['Mix-ups', 'mix-up', 'Two parts that were taken for one another, and whether that does harm.'],
  }],
  ['Engines', {
    'variants': ['Variants', 'variant', 'The engines of the family as they were built.'],
    'engine': ['Engine facts', 'engine fact', 'Bore, stroke, speed and the like of a whole variant.'],
    'positions': ['Positions', 'position', 'The named places on the engine where a part sits.'],
    'fitments': ['Fitted parts', 'fitted part', 'What the maker put at a position of a variant, and over which engines.'],
    'torques': ['Torques', 'pass of tightening', 'How a fastener is tightened: torque or angle, pass by pass, and whether it may be used again.'],
    'openings': ['What comes off first', 'row', 'Before this can be taken off, that has to be off: the order in which an engine comes apart.'],
    'bench-order': ['What goes in first', 'row', 'Where both are put in anyway, this one first; taking apart, the other way round.'],
    'renewals': ['What is renewed', 'renewal', 'A gasket, seal, bolt, sealant or fluid that is renewed because something was opened.'],
    'weak-points': ['Weak points', 'weak point', 'What is known to be weak on a variant, and what mends it.'],
    'access': ['Ways in', 'way in', 'How long it takes until a position can be seen on a complete engine.'],
  }],
  ['What has to agree', {
    'needs': ['Demands', 'demand', 'What a position asks of any part, where the part fitted there is too narrow a measure.'],
    'joints': ['Joints', 'joint', 'A feature here that mates with a feature there: pin and eye, filter and stud.'],
    'stacks': ['Sums of lengths', 'sum of lengths', 'Lengths over several positions, added up, and the band they must end in.'],
    'companions': ['What goes with what', 'companion', 'When this sits here, that has to sit there.'],
    'selects': ['Graded parts', 'graded part', 'Which grade to take for which reading on the engine.'],
  }],
  ['What people found', {
    'evidence': ['Evidence', 'piece of evidence', 'Who says so: the sources that every other row rests on.'],
    'sources': ['More of a source', 'note on a source', 'Instrument, hours under load, page: what else is to be said of a piece of evidence.'],
    'findings': ['Findings', 'finding', 'Somebody tried this part there: did it go on, did the engine run as before.'],
    'photos': ['Photographs', 'photograph', 'Pictures of parts and of what was found.'],
  }],
  ['Parts in hand', {
    'items': ['Items', 'item', 'Single pieces on the bench or from the yard, each its own used self.'],
    'readings': ['Readings', 'reading', 'What was measured on one item. It says nothing of its number until somebody lets it.'],
    'works-done': ['Work done', 'piece of work', 'What has been done to an item.'],
  }],
  ['What is for sale', {
    'offers': ['Offers', 'offer', 'What somebody sells, for how much, and when that was seen.'],
    'listings': ['Listings', 'listing', 'The words that offers were read from, as they stood.'],
    'sellers': ['Sellers', 'seller', 'Who sells, what they ask for sending, how long they take.'],
  }],
  ['Kinds of part', {
    'kinds': ['Kinds', 'kind of part', 'Camshaft, barrel, injector: what is looked at in the same way.'],
    'features': ['Features', 'feature', 'What is worth knowing of a kind.'],
    'rules': ['Rules', 'rule', 'What it means when a feature is not as it should be.'],
    'limits': ['Wear limits', 'wear limit', 'How far a used part may be gone: any of a kind, or one number.'],
    'reminders': ['Reminders', 'reminder', 'What a builder asks or minds when such a part comes off, goes on, or before the engine is started.'],
    'checks': ['Checks', 'check', 'How a feature is seen or measured, and how good the reading is.'],
    'shots': ['Photographs to ask for', 'photograph to ask for', 'The pictures that settle what a part is before paying.'],
    'works': ['Works', 'work', 'Machining and fitting: how long, how dear, by whom.'],
  }],
  ['The book', {
    'book': ['Title page', 'title page', 'What this book is and which books it builds on.'],
    'makers': ['Makers', 'maker', 'Who makes engines and parts.'],
  }],
];

const tables = Object.assign({}, ...shelves.map(([, shelf]) => shelf));

export const tableName = table => tables[table]?.[0] ?? plain(table);

/** What one row of a table is. */
export const rowName = table => tables[table]?.[1] ?? 'row';

export const tableHolds = table => tables[table]?.[2] ?? '';

const labels = {
  allowance: 'Still accepted', author: 'Who says so', axis: 'Question', builtFrom: 'Built from', builtTo: 'Built up to', caption: 'What it shows',
  certain: 'Is it in there', changes: 'Changes afterwards',
  choices: 'Allowed words', companion: 'Name of it', condition: 'Condition', consequence: 'At worst', country: 'Country', currency: 'Currency',
  days: 'Days away', daysMax: 'Days on the way, at most',
  daysMin: 'Days on the way, at least', derivedFrom: 'Copied from', doneOn: 'Done on', effect: 'If not met', evidence: 'Evidence', feature: 'Feature',
  format: 'Format of the book', freeFrom: 'Sent free from',
  from: 'Reading from', fuel: 'Fuel', grade: 'Grade', group: 'Group', hours: 'Hours under load', how: 'How', image: 'File of the picture',
  importCharge: 'Import charge', instrument: 'Instrument', item: 'Item',
  joint: 'Name of it', judgement: 'What was found', kind: 'Kind of part', leftFeature: 'Feature here', leftPosition: 'Position here', licence: 'Licence',
  maker: 'Maker', mark: 'What shows the change',
  max: 'At most', measureFeature: 'Feature to measure', measurePosition: 'Position to measure', method: 'With what', min: 'At least', minus: 'Minus',
  minutes: 'Minutes', name: 'Name', needsFirst: 'Needed first',
  newPart: 'Newer number', note: 'Note', number: 'Number', oldPart: 'Older number', origin: 'Where it came from', outcome: 'Outcome',
  output: 'Power it ran at', page: 'Page', part: 'Part', partA: 'One part',
  partB: 'The other part', photo: 'Name of it', plus: 'Plus', position: 'Position', price: 'Price', property: 'Fact', quantity: 'Pieces', readOn: 'Read on',
  relation: 'How it must stand to it', restocking: 'Kept when sent back, %',
  retractedOn: 'Retracted on', retractedWhy: 'Retracted because', returnsDays: 'Days to send back', reviewed: 'Is the list of features complete',
  rightFeature: 'Feature there', rightPosition: 'Position there',
  role: 'Used in sums as', running: 'Can a wrong one change running', seller: 'Short name', serialFrom: 'Serial from', serialTo: 'Serial up to',
  set: 'Kit or assembly', shippingFixed: 'Sending, an order',
  shippingPerItem: 'Sending, a piece', shot: 'Short name', shows: 'Features to be read from it', sort: 'Sort of number', source: 'What it is',
  speaksOf: 'Speaks of', stack: 'Name of it', terms: 'Terms', thenFeature: 'Then feature',
  thenPosition: 'Then at', thenRelation: 'Then it must be', thenValue: 'Then value', title: 'Title', to: 'Reading up to', type: 'Sort of feature',
  uncertainty: 'Uncertainty', undo: 'Can it be undone', unit: 'Unit', uses: 'Builds on',
  value: 'Value', variant: 'Variant', variants: 'Only on these variants', way: 'Way', whenFeature: 'When feature', whenPosition: 'When at',
  whenRelation: 'When it is', whenValue: 'When value', who: 'Who does it',
  with: 'Together with', work: 'Work', x: 'At', y: 'And at', curve: 'Curve', cautions: 'Cautions', finding: 'Name of it', book: 'Short name',
  offer: 'Name of it', numberAsWritten: 'Number as the seller writes it', pack: 'Pieces for the price', stock: 'Packs in stock', level: 'How much of the engine',
  coreDeposit: 'Deposit for the old part', seenOn: 'Seen on', shipping: 'Sending', corePart: 'Old part that counts', freightBack: 'Who pays the way back',
  returnable: 'Is it taken back', listing: 'Listing', address: 'Address of the page', text: 'Its words',
  offFirst: 'Comes off first', opened: 'When this is opened', renewed: 'This is renewed', amount: 'So much of it', bead: 'How it is laid', cureHours: 'Hours to cure',
  weakPoint: 'Name of it', what: 'What is weak', remedyPart: 'Part that mends it', remedyWork: 'Work that mends it',
  lubrication: 'Threads', pass: 'Pass', sequence: 'In which order', singleUse: 'Used once only',
};

const ownLabels = {
  'book.kind': 'Sort of book', 'evidence.date': 'Made or written on', 'evidence.evidence': 'Code', 'features.kind': 'Kind of part',
  'items.item': 'Name of it', 'kinds.kind': 'Short name', 'makers.maker': 'Short name', 'numbers.part': 'Part it is on or for',
  'positions.position': 'Short name', 'selects.part': 'Take this part', 'supersessions.quantity': 'New ones for one old', 'variants.variant': 'Short name',
  'works.work': 'Short name', 'parts.part': 'Number', 'torques.value': 'Torque or angle', 'listings.listing': 'Digest of its words',
};

const asWords = column => plain(column.replace(/[A-Z]/g, letter => `-${letter.toLowerCase()}`));

export const columnName = (table, column) => ownLabels[`${table}.${column}`] ?? labels[column] ?? asWords(column);

const measure = 'With its unit, such as 86.5 mm or 3.40 in.';
const hints = {
  value: 'A measure with its unit such as 86.5 mm, a whole number, or a word.', min: measure, max: measure, from: measure, to: measure, allowance: measure,
  output: measure,
  whenValue: 'As the relation wants it.', thenValue: 'As the relation wants it.',
  minus: 'How much less the maker allows. 0 only where the source says so.', plus: 'How much more the maker allows.', uncertainty: 'How well it is known, ±.',
  retractedOn: 'From then on it counts for nothing, and stays visible.', variants: 'None ticked: all of them.', derivedFrom: 'Copies of one root count once.',
  hours: 'Hours the engine ran with it under load.',
  terms: 'Such as +flywheel-bolt.length|-flywheel.flange; a constant is a number with its sign.', page: 'Of the document, or the text of a link.',
  'findings.with': 'position=maker:number, or position=none; one in each line.',
  image: 'As the server named it when it was sent.', fuel: 'In words.', number: 'maker:number; the maker is whoever uses this number.',
  mark: 'What can be seen on the engine that tells the two apart.',
  'fitments.part': 'maker:number, or none where nothing sits.', 'limits.part': 'Empty: every part of the kind.', 'fitments.quantity': 'For each engine; 0 where nothing sits.',
  'evidence.source': 'So that somebody finds it again.',
  'torques.value': 'With its unit: 75 N·m, 55 lbf·ft, or 90 deg turned on.', pass: '1 for the first; one row for each.',
  numberAsWritten: 'Also where no book has it.', pack: 'Empty where it is not known.', 'offers.shipping': 'Empty: the seller’s usual. Free is 0.', 'offers.returnsDays': 'Empty: the seller’s usual.',
  'offers.restocking': 'Empty: the seller’s usual.', 'offers.part': 'maker:number; empty where no book has the number.', 'listings.listing': 'SHA-256 of the words: other words are another listing.',
  'offers.seenOn': 'The day, such as 2026-06-01.', 'listings.seenOn': 'The day, such as 2026-06-01.',
  amount: 'With its unit: 12 mL, 5 g. Empty for a piece.', bead: 'Such as 2 mm, inside the bolt holes.', cureHours: 'Until it may be filled.',
  lubrication: 'Of the threads and under the head, as the source wants them.', sequence: 'Such as crosswise from the middle outwards.',
};

const shapes = [
  [/^a date/, 'Year and month such as 2019-04, or with the day 2019-04-30.'], [/^maker:number/, 'maker:number as it is written on it.'],
  [/^a whole number/, 'Digits only.'], [/^a plain number/, 'A plain number with a point, such as 12.5.'], [/^a code/, 'Small letters, digits and hyphens.'],
  [/^a unit/, 'As the unit table writes it, such as mm.'], [/^an ISO 4217/, 'Three letters, such as EUR.'], [/^an ISO 3166/, 'Two letters, such as GB.'],
];

const isFeature = /^(feature|curve|property)$|Feature$/;

/** What is expected in a column, in few words; '' where anything goes. `refers` fields offer what there is. */
export function columnHint(table, { column, expected, refers, list, oneOf }) {
  const own = hints[`${table}.${column}`] ?? hints[column];
  if (own !== undefined) return own;
  if (oneOf || /^text/.test(expected)) return '';
  if (list) return 'One in each line.';
  if ((refers && refers !== 'part') || isFeature.test(column)) return 'Begin to type, or pick one.';
  return shapes.find(([shape]) => shape.test(expected))?.[1] ?? expected;
}

const vocabularies = { effect: 'effect', grade: 'grade', method: 'method', sort: 'sort', consequence: 'consequence', judgement: 'relation' };

const words = {
  running: { 'can-alter': 'yes, it can', 'cannot-alter': 'no, it cannot' },
  way: { one: 'new for old only', both: 'either way' },
  axis: { mounts: 'does it mount', runs: 'does the engine run the same' }, outcome: { 'same': 'runs the same', 'differently': 'runs differently' },
  certain: { yes: 'always', possible: 'perhaps', no: 'no, though one would expect it' },
  origin: { 'donor': 'a donor engine', 'yard-pull': 'pulled in the yard', 'arrival': 'came by post', 'bench-stock': 'on the bench already' },
  lubrication: {
    'dry': 'dry, no oil', 'oiled': 'oiled', 'zinc-plated': 'zinc-plated', 'cadmium-plated': 'cadmium-plated', 'other': 'something else, which the note says',
  },
  singleUse: { no: 'no, used again', yes: 'yes, for its lock or seal', stretch: 'yes, it is stretched for good' },
  freightBack: { buyer: 'the buyer', seller: 'the seller' },
  level: {
    'bare': 'the bare casting', 'short': 'with crankshaft, rods and pistons', 'long': 'with head and valve gear', 'complete': 'complete', 'heard-running': 'complete, heard running',
  },
  speaksOf: { number: 'the number: any part that bears it', item: 'one single item' },
  relation: { 'same': 'the same', 'at-least': 'at least that', 'at-most': 'at most that', 'one-of': 'one of these', 'covers': 'has all of these',
    'band': 'apart within the band' },
  type: { quantity: 'a measure with a unit', count: 'a count', choice: 'one word of a list', choices: 'several words of a list', curve: 'a curve' },
};

/** What a cell of the history says: words where it is a code of a closed vocabulary. */
export const cellWords = (column, text) => (vocabularies[column] || words[column]?.[text] ? codeWords(column, text) : text);

/** The words for a code of a closed vocabulary. */
export function codeWords(column, code) {
  if (vocabularies[column]) return say(vocabularies[column], code);
  const shared = column.endsWith('Relation') ? 'relation' : column;
  return words[shared]?.[code] ?? plain(code);
}
