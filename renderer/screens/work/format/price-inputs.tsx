import { currencyCodes } from '../../../lib/money.ts';
import { Button, MoneyInput, Select } from '../../../ui/index.ts';
import type { ErrorOf } from '../parts/refusals.ts';
import type { PriceRow } from './draft.ts';

const TAXES: { value: PriceRow['tax']; label: string }[] = [
  { value: 'including', label: 'including tax' },
  { value: 'excluding', label: 'without tax' },
];

export interface PriceInputsProps {
  value: readonly PriceRow[];
  onChange: (value: PriceRow[]) => void;
  /** The currency of the settings, offered first. */
  usual: string;
  errorOf: ErrorOf;
}

/** Retail prices, one for each currency. */
export function PriceInputs({ value, onChange, usual, errorOf }: PriceInputsProps) {
  const used = new Set(value.map((row) => row.money?.currency));
  const first = [usual, 'EUR', 'GBP', 'USD'].filter((code) => !used.has(code));
  const add = () => {
    const key = Math.max(-1, ...value.map((row) => row.key)) + 1;
    onChange([...value, { key, money: undefined, tax: 'including' }]);
  };
  const change = (key: number, part: Partial<PriceRow>) =>
    onChange(value.map((row) => (row.key === key ? { ...row, ...part } : row)));
  const error = errorOf('prices');
  return (
    <fieldset className="field prices">
      <legend className="field-label">Retail prices</legend>
      {value.length === 0 ? <p className="soft">No price yet.</p> : null}
      {value.map((row, index) => (
        <div className="price-row" key={row.key}>
          <MoneyInput
            label={`Price ${index + 1}`}
            value={row.money}
            onChange={(money) => change(row.key, { money })}
            currencies={currencyCodes(first)}
            error={errorOf(`prices.${index}.amountMinor`)}
          />
          <Select
            label={`Tax of price ${index + 1}`}
            labelHidden
            width="short"
            value={row.tax}
            onChange={(tax) => change(row.key, { tax })}
            choices={TAXES}
          />
          <Button
            kind="quiet"
            label={`Remove price ${index + 1}`}
            onClick={() => onChange(value.filter((other) => other.key !== row.key))}
          >
            Remove
          </Button>
        </div>
      ))}
      <Button onClick={add}>Add a price</Button>
      {error ? <p className="field-error">{error}</p> : null}
    </fieldset>
  );
}
