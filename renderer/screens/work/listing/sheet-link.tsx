import { Link } from 'wouter';
import type { ListingItemProps } from './listing-props.ts';

/** Leads to the submission sheet of a listing. */
export function SheetLink({ edition, format, listing }: ListingItemProps) {
  return (
    <Link
      className="button button-quiet"
      href={`/work/${edition.workId}/sheet/${listing.id}`}
      aria-label={`Submission sheet: ${format.name} on ${listing.channelName}`}
    >
      Submission sheet
    </Link>
  );
}
