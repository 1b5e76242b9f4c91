import { useState } from 'react';
import type { Money } from '../../src/contract/operation.ts';
import { currencyCodes, minorDigits, parseMoney, typedMoney } from '../lib/money.ts';
import { holdBack, useDraft } from './draft.ts';
import { Field, type FieldCommon } from './field.tsx';

export interface MoneyInputProps extends FieldCommon {
  /** Integer minor units with their currency. */
  value: Money | undefined;
  onChange: (value: Money | undefined) => void;
  /** Currencies to choose from, the usual one first; every known currency if left out. One alone is not a choice. */
  currencies?: readonly string[] | undefined;
  locale?: string | undefined;
}

/** An amount typed in major units the way the person's locale writes them. */
export function MoneyInput(props: MoneyInputProps) {
  const { value, onChange, locale } = props;
  const codes = props.currencies ?? currencyCodes(['EUR']);
  const [chosen, setChosen] = useState(codes[0] ?? 'EUR');
  const currency = value?.currency ?? chosen;
  const draft = useDraft(
    value?.amountMinor,
    (amountMinor) => {
      setChosen(currency);
      onChange(amountMinor === undefined ? undefined : { amountMinor, currency });
    },
    (amountMinor) => typedMoney(amountMinor, currency, locale),
    (text) => parseMoney(text, currency, locale),
  );
  const example = typedMoney(12 * 10 ** minorDigits(currency), currency, locale);
  const problem = draft.wrong ? `Write an amount of ${currency} such as ${example}.` : undefined;
  const changeCurrency = (next: string) => {
    setChosen(next);
    const amountMinor = parseMoney(draft.text, next, locale);
    onChange(amountMinor === undefined ? undefined : { amountMinor, currency: next });
  };
  return (
    <Field {...props} error={problem ?? props.error}>
      {(ids) => (
        <span className="input-group">
          {codes.length === 1 ? (
            <span className="input-unit">{currency}</span>
          ) : (
            <select
              className="input select input-currency"
              aria-label={`Currency of ${props.label}`}
              value={currency}
              disabled={props.disabled}
              onChange={(event) => changeCurrency(event.target.value)}
            >
              {(codes.includes(currency) ? codes : [currency, ...codes]).map((code) => (
                <option key={code}>{code}</option>
              ))}
            </select>
          )}
          <input
            {...ids}
            ref={holdBack(problem)}
            className="input input-number"
            type="text"
            inputMode="decimal"
            autoComplete="off"
            name={props.name}
            value={draft.text}
            disabled={props.disabled}
            onChange={(event) => draft.type(event.target.value)}
            onBlur={draft.settle}
          />
        </span>
      )}
    </Field>
  );
}
