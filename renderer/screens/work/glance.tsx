import { Link } from 'wouter';
import type { Edition } from '../../../src/contract/editions.ts';
import type { Format } from '../../../src/contract/formats.ts';
import { type Column, Isbn, Section, Sign, Standing, Table } from '../../ui/index.ts';
import { shortName } from './parts/edition-names.ts';
import { placeOf } from './parts/go-to.ts';
import { counted } from './parts/names.ts';
import { useWork } from './parts/work-context.tsx';

interface Row {
  edition: Edition;
  format: Format;
}

function NumberCell({ format }: { format: Format }) {
  if (format.hyphenated === null) return <span className="soft">no number yet</span>;
  return (
    <span className="locked-inline">
      <Isbn value={format.hyphenated} />
      {format.lock ? (
        <span title={format.lock.reason}>
          <Sign name="padlock" />
          <span className="visually-hidden">locked</span>
        </span>
      ) : null}
    </span>
  );
}

function channelColumns(rows: readonly Row[]): Column<Row>[] {
  const names = new Map(
    rows.flatMap(({ format }) => format.listings.map((listing) => [listing.channelId, listing.channelName])),
  );
  return [...names].map(([id, name]) => ({
    key: `channel-${id}`,
    header: name,
    cell: ({ format }) => {
      const listing = format.listings.find((one) => one.channelId === id);
      return listing ? <Standing of="listing" value={listing.standing} /> : <span className="soft">—</span>;
    },
  }));
}

/** Every format of every edition with its number, and where it stands on which channel. */
export function Glance() {
  const { work } = useWork();
  const rows = work.editions.flatMap((edition) => edition.formats.map((format) => ({ edition, format })));
  if (rows.length === 0) return null;
  const columns: Column<Row>[] = [
    {
      key: 'format',
      header: 'Format',
      cell: ({ edition, format }) => (
        <>
          <Link href={placeOf(work.id, 'format', format.id)} className="row-opener">
            {format.name}
          </Link>
          <span className="glance-edition">{shortName(edition)}</span>
        </>
      ),
    },
    { key: 'isbn', header: 'ISBN', nowrap: true, cell: ({ format }) => <NumberCell format={format} /> },
    {
      key: 'standing',
      header: 'Format stands',
      cell: ({ format }) => <Standing of="format" value={format.standing} />,
    },
    ...channelColumns(rows),
  ];
  return (
    <Section title="At a glance">
      <Table
        caption="Formats, their numbers and their channels"
        columns={columns}
        rows={rows}
        rowKey={({ format }) => format.id}
        rowTone={({ format }) =>
          format.standing === 'retired' || format.standing === 'cancelled' ? 'quiet' : undefined
        }
        foot={
          <span>
            {counted(rows.length, 'format')} in {counted(work.editions.length, 'edition')}. The padlock marks
            numbers that may no longer change.
          </span>
        }
      />
    </Section>
  );
}
