import { useState } from 'react';
import {
  Button,
  type Column,
  CopyButton,
  EmptyState,
  Isbn,
  KeyValue,
  SearchInput,
  Select,
  Standing,
  Table,
  Toolbar,
} from '../ui/index.ts';

interface Row {
  id: number;
  title: string;
  form: string;
  isbn: string;
  standing: 'live' | 'planned' | 'retired' | 'proofing';
  price: number;
}

const ROWS: Row[] = [
  {
    id: 1,
    title: 'The Salt Almanac',
    form: 'Paperback',
    isbn: '979-8-969999-00-8',
    standing: 'live',
    price: 1450,
  },
  {
    id: 2,
    title: 'Knots for Small Hands',
    form: 'Hardcover (laminate)',
    isbn: '979-8-969999-02-2',
    standing: 'live',
    price: 1800,
  },
  {
    id: 3,
    title: 'A Lantern Keeper’s Primer',
    form: 'Paperback',
    isbn: '979-8-969999-04-6',
    standing: 'retired',
    price: 1200,
  },
  {
    id: 4,
    title: 'Fen Light',
    form: 'Audiobook download (MP3)',
    isbn: '979-8-969999-09-1',
    standing: 'planned',
    price: 2100,
  },
];

const COLUMNS: Column<Row>[] = [
  {
    key: 'title',
    header: 'Title',
    cell: (row) => <cite className="title">{row.title}</cite>,
    sortBy: (row) => row.title,
  },
  { key: 'form', header: 'Format', cell: (row) => row.form, sortBy: (row) => row.form },
  { key: 'isbn', header: 'ISBN', cell: (row) => <Isbn value={row.isbn} copy /> },
  {
    key: 'standing',
    header: 'Standing',
    cell: (row) => <Standing of="format" value={row.standing} />,
    sortBy: (row) => row.standing,
  },
  {
    key: 'price',
    header: 'Price, EUR',
    align: 'end',
    cell: (row) => (row.price / 100).toFixed(2),
    sortBy: (row) => row.price,
  },
];

/** A table with its toolbar, an empty one, and names with values. */
export function TableSpecimens() {
  const [text, setText] = useState('');
  const [standing, setStanding] = useState<'all' | 'live'>('all');
  return (
    <div className="stack">
      <Toolbar
        label="Filters"
        end={
          <CopyButton
            text={ROWS.map((row) => row.isbn).join('\n')}
            what="The list of numbers"
            label="Copy the numbers"
          />
        }
      >
        <SearchInput label="Search" value={text} onChange={setText} placeholder="Title, person or number" />
        <Select
          label="Standing"
          width="short"
          value={standing}
          onChange={setStanding}
          choices={[
            { value: 'all', label: 'all' },
            { value: 'live', label: 'live' },
          ]}
        />
      </Toolbar>
      <Table
        caption="Formats"
        columns={COLUMNS}
        rows={ROWS.filter((row) => row.title.toLowerCase().includes(text.toLowerCase()))}
        rowKey={(row) => row.id}
        rowTo={(row) => `/work/${row.id}`}
        rowTone={(row) => (row.standing === 'retired' ? 'quiet' : undefined)}
        initialSort={{ key: 'title', down: false }}
        foot={<span>4 formats of 4 works</span>}
        empty={
          <EmptyState title="No number block yet" action={<Button kind="primary">Record a block</Button>}>
            Record the block of ISBNs your press owns; every format then takes its number from it.
          </EmptyState>
        }
      />
      <KeyValue
        items={[
          { label: 'Agency', value: 'United States' },
          { label: 'Registrant', value: <span className="mono">969999</span> },
          { label: 'Bought on', value: '' },
        ]}
      />
    </div>
  );
}
