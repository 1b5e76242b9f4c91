import type { Edition } from '../../../../src/contract/editions.ts';
import { Notice } from '../../../ui/index.ts';
import { editionOf, fullName } from '../parts/edition-names.ts';
import { useWork } from '../parts/work-context.tsx';

/** Says before a listing is asked off that the edition which replaces it is not on sale there yet. */
export function GapWarning({ edition, channelId }: { edition: Edition; channelId: number }) {
  const { work } = useWork();
  const next = editionOf(work, edition.replacedById);
  if (!next) return null;
  const listings = next.formats.flatMap((format) => format.listings);
  const here = listings.filter((listing) => listing.channelId === channelId);
  const looked = here.length > 0 ? here : listings;
  if (looked.some((listing) => listing.standing === 'selling')) return null;
  return (
    <Notice tone="care" title={`${fullName(next)} is not on sale there yet.`}>
      If the channel acts at once, readers find neither of the two for a while. Record this only if that is
      meant.
    </Notice>
  );
}
