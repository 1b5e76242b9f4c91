import type { CardFields, Fitted } from '../../../../src/contract/print-costs.ts';
import { useQueryOf } from '../../../api.ts';
import { formatMoney, formatParts } from '../../../lib/money.ts';
import { Button, MoneyInput, Notice, NumberInput, Refused } from '../../../ui/index.ts';
import { counted } from '../parts/names.ts';
import type { ErrorOf } from '../parts/refusals.ts';
import type { QuoteRow } from './card-draft.ts';

interface QuotesInputProps {
  quotes: readonly QuoteRow[];
  onChange: (quotes: QuoteRow[]) => void;
  currency: string;
  errorOf: ErrorOf;
}

/** What a printer asked for books of different page counts, one row each. */
export function QuotesInput({ quotes, onChange, currency, errorOf }: QuotesInputProps) {
  const change = (key: number, part: Partial<QuoteRow>) =>
    onChange(quotes.map((row) => (row.key === key ? { ...row, ...part } : row)));
  const add = () =>
    onChange([
      ...quotes,
      { key: Math.max(-1, ...quotes.map(({ key }) => key)) + 1, pages: undefined, amount: undefined },
    ]);
  const error = errorOf('price') ?? errorOf('price.quotes');
  return (
    <fieldset className="field">
      <legend className="field-label">Quotes</legend>
      <p className="field-help">
        What the printer asks for one copy of so many pages. Two quotes for different page counts tell all
        others between them; with more, the nearest line is taken and shown with how far each quote is off.
      </p>
      {quotes.map((row, index) => (
        <div className="quote-row" key={row.key}>
          <NumberInput
            label={`Pages of quote ${index + 1}`}
            min={1}
            max={20_000}
            value={row.pages}
            onChange={(pages) => change(row.key, { pages })}
            error={errorOf(`price.quotes.${index}.pages`)}
          />
          <MoneyInput
            key={currency}
            label={`One copy, quote ${index + 1}`}
            currencies={[currency]}
            value={row.amount}
            onChange={(amount) => change(row.key, { amount })}
            error={errorOf(`price.quotes.${index}.amountMinor`)}
          />
          <Button
            kind="quiet"
            label={`Remove quote ${index + 1}`}
            onClick={() => onChange(quotes.filter(({ key }) => key !== row.key))}
          >
            Remove
          </Button>
        </div>
      ))}
      <Button onClick={add}>Add a quote</Button>
      {error ? <p className="field-error">{error}</p> : null}
    </fieldset>
  );
}

const HOW: Record<Fitted['how'], string> = {
  stated: 'As the printer states it.',
  exact: 'The quotes lie on this line exactly.',
  'least squares': 'The line nearest to the quotes (least squares).',
  'one page count': 'One page count alone: enter a quote for another one, so that the rest follows.',
};

/** '+0.20 above the line', '0.20 below', or that it is met. */
function offText(offParts: number, currency: string): string {
  if (offParts === 0) return 'on the line';
  // To a hundredth of a minor unit: finer says nothing to the eye.
  const shown = Math.round(Math.abs(offParts) / 100) * 100;
  return `${formatParts(shown, currency)} ${offParts > 0 ? 'above' : 'below'} the line`;
}

/** The fixed part and the part for a page that follow, and how far each quote is off. */
export function FitShown({ fitted, currency }: { fitted: Fitted; currency: string }) {
  const { fixedParts, pageParts, quotes, warnings, how } = fitted;
  return (
    <div className="stack">
      {fixedParts === null || pageParts === null ? null : (
        <p>
          <strong>{formatParts(fixedParts, currency)}</strong> a copy and{' '}
          <strong>{formatParts(pageParts, currency)}</strong> a page. <span className="soft">{HOW[how]}</span>
        </p>
      )}
      {how === 'one page count' ? <p className="soft">{HOW[how]}</p> : null}
      {how === 'least squares' ? (
        <ul className="money-list">
          {quotes.map(({ pages, amountMinor, fittedMinor, offParts }, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: two quotes may be the same
            <li key={index}>
              {counted(pages, 'page')}: {formatMoney(amountMinor, currency)} asked
              {fittedMinor === null ? '' : `, ${formatMoney(fittedMinor, currency)} by the line`};{' '}
              {offText(offParts, currency)}
            </li>
          ))}
        </ul>
      ) : null}
      {warnings.length > 0 ? (
        <Notice tone="care" title="These quotes need a second look.">
          <ul>
            {warnings.map((warning) => (
              <li key={warning}>{warning}</li>
            ))}
          </ul>
        </Notice>
      ) : null}
    </div>
  );
}

/** The same for what is being typed, worked out as it changes. */
export function FitPreview({
  price,
  currency,
}: {
  price: CardFields['price'] | undefined;
  currency: string;
}) {
  const { data, error } = useQueryOf(
    'printCosts.fit',
    { currency, price: price ?? { kind: 'stated', fixedParts: 0, pageParts: 0 } },
    { keep: true, enabled: price !== undefined },
  );
  if (price === undefined) return <p className="soft">What follows from them is shown here.</p>;
  return (
    <div aria-live="polite">
      <Refused refusal={error} />
      {data && !error ? <FitShown fitted={data} currency={currency} /> : null}
    </div>
  );
}
