import { Link } from 'wouter';
import type { Edition } from '../../../../src/contract/editions.ts';
import { editionOf, shortName } from '../parts/edition-names.ts';
import { placeOf } from '../parts/go-to.ts';
import { useWork } from '../parts/work-context.tsx';

/** Which edition this one replaces, and by which it is replaced. */
export function EditionLinks({ edition }: { edition: Edition }) {
  const { work } = useWork();
  const older = editionOf(work, edition.replacesId);
  const newer = editionOf(work, edition.replacedById);
  if (!older && !newer) return null;
  return (
    <p className="edition-links">
      {older ? (
        <span>
          Replaces <Link href={placeOf(work.id, 'edition', older.id)}>{shortName(older)}</Link>
        </span>
      ) : null}
      {newer ? (
        <span>
          Replaced by <Link href={placeOf(work.id, 'edition', newer.id)}>{shortName(newer)}</Link>
        </span>
      ) : null}
    </p>
  );
}
