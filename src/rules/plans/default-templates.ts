import type { PlanKind, PlanStep } from '../../contract/plan-templates.ts';
import { CHECK_WITHIN, PROOF_BY_POST } from './proof-days.ts';

type Given = Pick<PlanStep, 'key' | 'title' | 'scope' | 'days' | 'side' | 'anchor'> & Partial<PlanStep>;

/** A step of ours: its kind is its key unless given. */
function step(given: Given): PlanStep {
  return {
    kind: given.key as PlanStep['kind'],
    note: '',
    made: [],
    proof: [],
    needs: [],
    on: true,
    ...given,
  };
}

/** Working days before submission at which the preparations are due are our own allowance. */
const RELEASE: readonly PlanStep[] = [
  step({
    key: 'finish-content',
    title: 'Finish the text and everything that goes into the files',
    scope: 'edition',
    days: 10,
    side: 'before',
    anchor: 'submission',
  }),
  // What the agency wants to know: ISBN Users' Manual, section 8 (STANDARDS A12; the list is remembered).
  step({
    key: 'register-numbers',
    title: 'Register the numbers with the ISBN agency, with the data it asks for',
    note: "For each number commonly: ISBN, product form, title and subtitle, series, contributors with their roles, edition, language, imprint, publisher, country and date of publication; for digital forms what the buyer may do. A working title is allowed; report the final one. The agency's own rules say what it wants and when.",
    scope: 'edition',
    days: 5,
    side: 'before',
    anchor: 'submission',
  }),
  step({
    key: 'settle-data',
    title: 'Settle prices, descriptions, subjects and keywords',
    scope: 'edition',
    days: 5,
    side: 'before',
    anchor: 'submission',
  }),
  step({
    key: 'make-interior',
    title: 'Make the interior file of {format}',
    scope: 'format',
    made: ['print'],
    days: 3,
    side: 'before',
    anchor: 'submission',
    needs: ['finish-content'],
  }),
  step({
    key: 'make-cover',
    title: 'Make the cover file of {format}',
    note: 'The spine width follows from the final page count and the paper.',
    scope: 'format',
    made: ['print'],
    days: 1,
    side: 'before',
    anchor: 'submission',
    needs: ['make-interior'],
  }),
  step({
    key: 'make-e-book',
    title: 'Make the file and the cover image of {format}',
    note: 'The file carries its own ISBN inside, not the one of the printed book.',
    scope: 'format',
    made: ['e-book'],
    days: 2,
    side: 'before',
    anchor: 'submission',
    needs: ['finish-content'],
  }),
  step({
    key: 'make-audio',
    title: 'Make the sound files and the cover image of {format}',
    scope: 'format',
    made: ['audio'],
    days: 2,
    side: 'before',
    anchor: 'submission',
    needs: ['finish-content'],
  }),
  step({
    key: 'submit',
    title: 'Submit {format} to {channel}',
    note: 'Submit everywhere on the same day, so that the same data appears everywhere.',
    scope: 'listing',
    days: 0,
    side: 'after',
    anchor: 'submission',
    needs: ['register-numbers', 'settle-data', 'make-cover', 'make-e-book', 'make-audio'],
  }),
  step({
    key: 'check-proof',
    title: 'Check the proof of {format} from {channel}',
    scope: 'listing',
    proof: ['electronic'],
    days: CHECK_WITHIN,
    side: 'after',
    anchor: 'submission',
    needs: ['submit'],
  }),
  step({
    key: 'check-printed-proof',
    kind: 'check-proof',
    title: 'Check the printed proof of {format} from {channel}',
    scope: 'listing',
    proof: ['physical'],
    days: CHECK_WITHIN + PROOF_BY_POST,
    side: 'after',
    anchor: 'submission',
    needs: ['submit'],
  }),
  step({
    key: 'approve',
    title: 'Approve {format} at {channel}',
    scope: 'listing',
    days: 1,
    side: 'after',
    anchor: 'submission',
    needs: ['check-proof', 'check-printed-proof'],
  }),
  step({
    key: 'on-sale',
    title: 'Put {format} on sale at {channel}',
    scope: 'listing',
    days: 0,
    side: 'after',
    anchor: 'release',
    needs: ['approve'],
  }),
  step({
    key: 'check-page',
    title: 'Check the page of {format} at {channel}',
    note: 'Title, contributors, price, description and ISBN as recorded here.',
    scope: 'listing',
    days: 1,
    side: 'after',
    anchor: 'release',
    needs: ['on-sale'],
  }),
];

const RETIREMENT: readonly PlanStep[] = [
  step({
    key: 'ask-removal',
    title: 'Ask {channel} to stop selling {format}',
    scope: 'listing',
    days: 0,
    side: 'after',
    anchor: 'start',
  }),
  step({
    key: 'chase',
    title: 'Ask {channel} again if {format} still shows for sale',
    scope: 'listing',
    days: 0,
    side: 'after',
    anchor: 'promise',
    needs: ['ask-removal'],
  }),
  // The days after chasing are our own allowance.
  step({
    key: 'confirm-gone',
    title: 'Confirm that {format} is gone from {channel}',
    note: 'Copies offered second-hand by others are no concern of this task.',
    scope: 'listing',
    days: 5,
    side: 'after',
    anchor: 'promise',
    needs: ['ask-removal'],
  }),
  step({
    key: 'take-back',
    title: 'Take {format} back from {channel}',
    note: 'It was sent but never on sale there.',
    scope: 'listing',
    days: 0,
    side: 'after',
    anchor: 'start',
  }),
  // Out of print and its caution: the ISBN agency's questions and answers (STANDARDS F).
  step({
    key: 'record-out-of-print',
    title: 'Have the bibliographic record set to out of print',
    note: 'The number stays valid for ever and is never given to anything else.',
    scope: 'edition',
    days: 0,
    side: 'after',
    anchor: 'request',
    needs: ['ask-removal'],
  }),
  step({
    key: 'move-links',
    title: 'Move links, the website entry and reviews to {replacement}',
    note: 'Not every channel carries reviews over to another ISBN; ask.',
    scope: 'edition',
    days: 0,
    side: 'after',
    anchor: 'replacement',
  }),
  step({
    key: 'note-returns',
    title: 'Settle the last day on which copies may come back',
    note: 'Copies commonly come back for 90 to 180 days after a book goes out of print (remembered, no source); keep money aside until then.',
    scope: 'edition',
    days: 0,
    side: 'after',
    anchor: 'start',
  }),
];

/** The steps of a plan as delivered; in use until something is saved. */
export const DEFAULT_STEPS: Readonly<Record<PlanKind, readonly PlanStep[]>> = {
  release: RELEASE,
  retirement: RETIREMENT,
};
