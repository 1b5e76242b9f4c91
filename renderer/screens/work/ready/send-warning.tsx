import { Notice } from '../../../ui/index.ts';
import type { ListingItemProps } from '../listing/listing-props.ts';
import { needsOn, useReadiness } from './use-readiness.ts';

/** Warns before something is sent that a channel will ask for and that is missing. It does not stand in the way. */
export function SendWarning({ format, listing }: Pick<ListingItemProps, 'format' | 'listing'>) {
  const readiness = useReadiness(format);
  const missing = readiness
    ? needsOn(readiness, listing.channelName).filter((need) => need.state === 'missing')
    : [];
  if (missing.length === 0) return null;
  return (
    <Notice tone="care" title="Not everything is there that a channel asks for.">
      <ul className="summary-list">
        {missing.map((need) => (
          <li key={need.need}>
            {need.label}: {need.detail}
          </li>
        ))}
      </ul>
      Leave this and mend it at the format first, or record the step if it was sent without.
    </Notice>
  );
}
