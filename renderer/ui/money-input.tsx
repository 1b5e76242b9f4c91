import { useState } from 'react';
import type { Money } from '../../src/contract/operation.ts';
import { currencyCodes, formatMoney, minorDigits, parseMoney, typedMoney } from '../lib/money.ts';
import { readMoney } from '../lib/paste/money.ts';
import { holdBack, isWhole, useDraft } from './draft.ts';
import { Field, type FieldCommon } from './field.tsx';
import { useUnderstanding } from './understood.tsx';

export interface MoneyInputProps extends FieldCommon {
  /** Integer minor units with their currency. */
  value: Money | undefined;
  onChange: (value: Money | undefined) => void;
  /** Currencies to choose from, the usual one first; every known currency if left out. One alone is not a choice. */
  currencies?: readonly string[] | undefined;
  locale?: string | undefined;
}

/** Reads amounts that are not written as the locale writes them, and shows or asks how they were understood. */
function useMessyMoney(props: MoneyInputProps, currency: string, onTake: (money: Money) => void) {
  const { locale, currencies } = props;
  const write = (money: Money) => formatMoney(money.amountMinor, money.currency, locale);
  const { hear, note, forget } = useUnderstanding(write, onTake);
  const read = (given: string) => {
    const text = given.trim().slice(0, 60);
    const reading = readMoney(text, currency, locale);
    if (reading.kind === 'unread') return hear({ text, values: [], why: reading.why });
    const values = reading.kind === 'sure' ? [reading.money] : reading.choices;
    const foreign = values.find((money) => currencies?.length === 1 && money.currency !== currencies[0]);
    if (foreign)
      return hear({ text, values: [], why: `This is in ${foreign.currency}; here ${currency} is asked.` });
    hear({ text, values, ask: reading.kind === 'either' });
  };
  return { read, note, forget };
}

function wordsOf(currency: string, locale: string | undefined): string {
  const example = typedMoney(12 * 10 ** minorDigits(currency), currency, locale);
  return `Write an amount of ${currency} such as ${example}.`;
}

interface CurrencyInputProps {
  label: string;
  codes: readonly string[];
  value: string;
  disabled: boolean | undefined;
  onChange: (currency: string) => void;
}

function CurrencyInput({ label, codes, value, disabled, onChange }: CurrencyInputProps) {
  if (codes.length === 1) return <span className="input-unit">{value}</span>;
  return (
    <select
      className="input select input-currency"
      aria-label={label}
      value={value}
      disabled={disabled}
      onChange={(event) => onChange(event.target.value)}
    >
      {(codes.includes(value) ? codes : [value, ...codes]).map((code) => (
        <option key={code}>{code}</option>
      ))}
    </select>
  );
}

/** An amount typed in major units the way the person's locale writes them, or pasted in any writing. */
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
  const problem = draft.wrong ? wordsOf(currency, locale) : undefined;
  const messy = useMessyMoney(props, currency, (money) => {
    setChosen(money.currency);
    onChange(money);
    // The same value as before would leave the text as it was typed.
    draft.write(typedMoney(money.amountMinor, money.currency, locale));
  });
  const changeCurrency = (next: string) => {
    setChosen(next);
    const amountMinor = parseMoney(draft.text, next, locale);
    onChange(amountMinor === undefined ? undefined : { amountMinor, currency: next });
  };
  return (
    <Field {...props} error={problem ?? props.error}>
      {(ids) => (
        <>
          <span className="input-group">
            <CurrencyInput
              label={`Currency of ${props.label}`}
              codes={codes}
              value={currency}
              disabled={props.disabled}
              onChange={changeCurrency}
            />
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
              onChange={(event) => {
                messy.forget();
                draft.type(event.target.value);
              }}
              onBlur={() => (draft.wrong ? messy.read(draft.text) : draft.settle())}
              onPaste={(event) => {
                const text = event.clipboardData.getData('text/plain');
                if (!isWhole(event.currentTarget) || parseMoney(text, currency, locale) !== undefined) return;
                event.preventDefault();
                messy.read(text);
              }}
            />
          </span>
          {messy.note}
        </>
      )}
    </Field>
  );
}
