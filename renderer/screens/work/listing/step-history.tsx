import type { Listing } from '../../../../src/contract/listings.ts';
import { counted } from '../parts/names.ts';

/** Every step a listing took with its day and note, behind a line that opens it. */
export function StepHistory({ listing }: { listing: Listing }) {
  if (listing.steps.length === 0) return null;
  return (
    <details className="steps">
      <summary>
        {counted(listing.steps.length, 'step')}
        <span className="visually-hidden"> on {listing.channelName}</span>
      </summary>
      <ol className="plain-list">
        {listing.steps.map((step, index) => (
          // Steps are only ever added at the end.
          // biome-ignore lint/suspicious/noArrayIndexKey: the place is the identity
          <li key={index}>
            <time dateTime={step.on}>{step.on}</time> {step.from} → {step.to}
            {step.note === '' ? null : <span className="soft"> · {step.note}</span>}
          </li>
        ))}
      </ol>
    </details>
  );
}
