import { useState } from 'react';
import type { Settings } from '../../../src/contract/settings.ts';
import { currencyCodes, minorDigits } from '../../lib/money.ts';
import { Button, Select, TextInput } from '../../ui/index.ts';
import type { SettingFields } from './fields.ts';

type Endings = Settings['priceEndings'][number];

/** '99' → '.99', '999' → '9.99', and as it is in a currency without minor units. */
function shown(ending: string, currency: string): string {
  const digits = minorDigits(currency);
  if (digits === 0 || ending.length < digits) return ending;
  return `${ending.slice(0, -digits)}.${ending.slice(-digits)}`;
}

/** '.99, 9.95' → ['99', '995']; each once, in the order typed. */
function typedEndings(text: string): string[] {
  const parts = text.split(/[\s;]+|,\s+|,$/).map((part) => part.replaceAll(/[.,]/g, ''));
  return [...new Set(parts.filter((part) => part !== ''))];
}

const isWrong = ({ endings }: Endings) =>
  endings.length === 0 || endings.length > 10 || endings.some((ending) => !/^[0-9]{1,4}$/.test(ending));

interface RowProps {
  of: Endings;
  onChange: (endings: string[]) => void;
  onRemove: () => void;
  error: string | undefined;
}

function EndingRow({ of, onChange, onRemove, error }: RowProps) {
  const { currency, endings } = of;
  const written = endings.map((ending) => shown(ending, currency)).join(' ');
  const [typed, setTyped] = useState(written);
  const text = typedEndings(typed).join() === endings.join() ? typed : written;
  return (
    <div className="row holiday-add">
      <TextInput
        label={`Endings in ${currency}`}
        mono
        value={text}
        onChange={(next) => {
          setTyped(next);
          onChange(typedEndings(next));
        }}
        error={error}
        help="The last digits, parted by blanks: .99 .95 .00, or 9.99 for 9.99, 19.99, 29.99."
      />
      <Button kind="quiet" label={`No endings in ${currency}`} onClick={onRemove}>
        Remove
      </Button>
    </div>
  );
}

/** How prices end in each currency; a currency that is not named takes any price. */
export function PriceEndings({ values, change, errorOf }: SettingFields) {
  const all = values.priceEndings;
  const left = currencyCodes([values.currency, 'EUR', 'GBP', 'USD']).filter(
    (code) => !all.some(({ currency }) => currency === code),
  );
  const [chosen, setChosen] = useState('');
  const next = left.includes(chosen) ? chosen : (left[0] ?? '');
  const write = (priceEndings: Endings[]) => change({ priceEndings });
  return (
    <div className="stack">
      <p className="soft">Lowest prices on the Money page of an edition are told with these endings too.</p>
      {all.map((of) => (
        <EndingRow
          key={of.currency}
          of={of}
          onChange={(endings) => write(all.map((one) => (one === of ? { ...one, endings } : one)))}
          onRemove={() => write(all.filter((one) => one !== of))}
          error={isWrong(of) ? errorOf('priceEndings') : undefined}
        />
      ))}
      <div className="row holiday-add">
        <Select
          label="Currency to add"
          value={next}
          onChange={setChosen}
          choices={left.map((value) => ({ value, label: value }))}
        />
        <Button onClick={() => write([...all, { currency: next, endings: ['99'] }])}>Add its endings</Button>
      </div>
    </div>
  );
}
