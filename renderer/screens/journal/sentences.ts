import type { CommandName } from '../../../src/contract/index.ts';

/** What was done, in plain words, by the name of the operation. */
const SENTENCES: Record<CommandName, string> = {
  'catalogue.demo': 'Loaded the demo press',
  'blocks.add': 'Recorded a block of numbers',
  'blocks.update': 'Changed what is noted about a block',
  'blocks.importList': 'Took over a list of owned numbers',
  'ranges.load': 'Loaded a table of ISBN ranges',
  'numbers.reserve': 'Reserved numbers',
  'numbers.release': 'Gave a reserved number back',
  'numbers.assign': 'Gave a format its number',
  'numbers.assignEdition': 'Gave the formats of an edition their numbers',
  'numbers.spend': 'Recorded a number as spent',
  'works.create': 'Recorded a work',
  'works.update': 'Changed a work',
  'works.remove': 'Removed a work',
  'editions.create': 'Added an edition',
  'editions.update': 'Changed an edition',
  'editions.remove': 'Removed an edition',
  'editions.prepareNext': 'Prepared the next edition',
  'editions.correct': 'Recorded a correction',
  'formats.create': 'Added a format',
  'formats.copy': 'Made a format from another',
  'formats.update': 'Changed a format',
  'formats.cancel': 'Cancelled a format',
  'formats.remove': 'Removed a format',
  'channels.create': 'Added a channel',
  'channels.update': 'Changed a channel',
  'channels.remove': 'Removed a channel',
  'listings.create': 'Listed a format on a channel',
  'listings.update': 'Changed a listing',
  'listings.remove': 'Removed a listing',
  'listings.move': 'Moved a listing',
  'submissions.record': 'Recorded changes sent to a channel',
  'proofs.record': 'Recorded a proof round',
  'costs.add': 'Recorded a cost',
  'costs.update': 'Changed a cost',
  'costs.remove': 'Removed a cost',
  'plans.release': 'Planned a release',
  'plans.retirement': 'Planned a retirement',
  'plans.redate': 'Moved a plan to another day',
  'plans.drop': 'Dropped a plan',
  'tasks.create': 'Added a task',
  'tasks.finish': 'Finished a task',
  'tasks.wait': 'Noted what a task waits for',
  'tasks.redate': 'Gave a task another day',
  'tasks.drop': 'Dropped a task',
  'templates.saveText': 'Saved a text',
  'templates.putBackText': 'Put an older text back in use',
  'audit.accept': 'Accepted a finding of the audit',
  'audit.reopen': 'Opened an accepted finding again',
  'journal.undo': 'Undid the change before',
  'settings.update': 'Changed the settings',
};

/** 'Moved a listing'; an operation of a later version is given by its own name. */
export function sentenceOf(operation: string): string {
  return Object.hasOwn(SENTENCES, operation)
    ? SENTENCES[operation as CommandName]
    : `Carried out ${operation}`;
}
