import type { Listing } from '../../../../src/contract/listings.ts';
import { formatDay } from '../../../lib/dates.ts';

/** Every step a listing took with its day and note, the oldest first. */
export function StepHistory({ listing }: { listing: Listing }) {
  return (
    <ol className="plain-list step-history" aria-label={`Steps on ${listing.channelName}`}>
      {listing.steps.map((step, index) => (
        // Steps are only ever added at the end.
        // biome-ignore lint/suspicious/noArrayIndexKey: the place is the identity
        <li key={index}>
          <time dateTime={step.on}>{formatDay(step.on)}</time> {step.from} → {step.to}
          {step.note === '' ? null : <span className="soft"> · {step.note}</span>}
        </li>
      ))}
    </ol>
  );
}
