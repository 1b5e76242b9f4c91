import { useState } from 'react';
import type { Money } from '../../src/contract/operation.ts';
import {
  Checkbox,
  DateInput,
  LengthInput,
  Locked,
  MoneyInput,
  NumberInput,
  Select,
  TextArea,
  TextInput,
} from '../ui/index.ts';

/** The inputs, empty, filled, wrong and locked. */
export function FieldSpecimens() {
  const [title, setTitle] = useState('The Salt Almanac');
  const [text, setText] = useState(
    'In a harbour town that measures its years by tides, a keeper of tables goes missing.',
  );
  const [pages, setPages] = useState<number>();
  const [day, setDay] = useState('2026-11-25');
  const [price, setPrice] = useState<Money | undefined>({ amountMinor: 1450, currency: 'EUR' });
  const [width, setWidth] = useState<number | undefined>(129_000);
  const [form, setForm] = useState<'BC' | 'BB' | 'ED' | ''>('');
  const [large, setLarge] = useState(true);
  return (
    <div className="columns">
      <TextInput
        label="Title"
        required
        value={title}
        onChange={setTitle}
        help="As it stands on the title page."
      />
      <TextInput
        label="ISBN"
        mono
        width="medium"
        value="979-8-969999-00-3"
        onChange={setTitle}
        error="The check digit is wrong: it should be 4."
      />
      <Locked
        label="Product form"
        value="Paperback"
        since="2019-03-04"
        by="Printworks Direct"
        instead={<a href="#/work">Make a new format instead</a>}
      />
      <TextArea label="Description" value={text} onChange={setText} countTo={60} />
      <NumberInput label="Pages" unit="pages" value={pages} onChange={setPages} min={1} max={2000} required />
      <DateInput label="On sale" value={day} onChange={setDay} />
      <MoneyInput label="Price" value={price} onChange={setPrice} currencies={['EUR', 'GBP', 'JPY']} />
      <LengthInput label="Trim width" value={width} onChange={setWidth} />
      <Select
        label="Form"
        placeholder="Choose a form"
        value={form}
        onChange={setForm}
        choices={[
          { value: 'BC', label: 'Paperback' },
          { value: 'BB', label: 'Hardcover' },
          { value: 'ED', label: 'E-book' },
        ]}
      />
      <Checkbox label="Large print" checked={large} onChange={setLarge} help="Set in 16 points or more." />
      <TextInput
        label="Series"
        value=""
        onChange={setTitle}
        disabled
        help="Committed formats keep their series."
      />
    </div>
  );
}
