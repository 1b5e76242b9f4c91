import { Link } from 'wouter';
import type { Edition } from '../../../../src/contract/editions.ts';
import { editionOf, fullName, shortName } from '../parts/edition-names.ts';
import { placeOf } from '../parts/go-to.ts';
import { useWork } from '../parts/work-context.tsx';

const WAS_ON_SALE: readonly string[] = ['live', 'retiring', 'retired'];

/** Pages of their own about an edition: its money, and its way off sale once that matters. */
function EditionPages({ edition }: { edition: Edition }) {
  const onSale = edition.formats.some((format) => WAS_ON_SALE.includes(format.standing));
  const at = (part: string) => `/work/${edition.workId}/${part}/${edition.id}`;
  return (
    <>
      <Link href={at('costs')} aria-label={`Costs and earnings: ${fullName(edition)}`}>
        Costs and earnings
      </Link>
      <Link href={at('money')} aria-label={`Money: ${fullName(edition)}`}>
        Money
      </Link>
      {onSale ? (
        <Link href={at('desk')} aria-label={`Retirement desk: ${fullName(edition)}`}>
          Retirement desk
        </Link>
      ) : null}
    </>
  );
}

/** Which edition this one replaces, and by which it is replaced. */
export function EditionLinks({ edition }: { edition: Edition }) {
  const { work } = useWork();
  const older = editionOf(work, edition.replacesId);
  const newer = editionOf(work, edition.replacedById);
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
      <EditionPages edition={edition} />
    </p>
  );
}
