import { currencyCodes } from '../../lib/money.ts';
import { Select, TextInput } from '../../ui/index.ts';
import type { SettingFields } from './fields.ts';
import { isOffered, LANGUAGE_CHOICES } from './languages.ts';

const OTHER = 'other';

function currencyChoices(current: string) {
  const names = new Intl.DisplayNames(undefined, { type: 'currency', fallback: 'none' });
  return currencyCodes([current]).map((code) => {
    const name = /^[A-Z]{3}$/.test(code) ? names.of(code) : undefined;
    return { value: code, label: name ? `${code} — ${name}` : code };
  });
}

/** A language by its name, or any other by its three letters. */
function Language({ values, change, errorOf }: SettingFields) {
  const known = isOffered(values.language);
  return (
    <>
      <Select
        label="Language"
        name={known ? 'language' : undefined}
        value={known ? values.language : OTHER}
        onChange={(code) => change({ language: code === OTHER ? '' : code })}
        choices={[...LANGUAGE_CHOICES, { value: OTHER, label: 'Another language…' }]}
        error={known ? errorOf('language') : undefined}
        help="New editions begin with it."
      />
      {known ? null : (
        <TextInput
          label="Code of the language"
          name="language"
          required
          mono
          width="short"
          value={values.language}
          onChange={(text) => change({ language: text.trim().toLowerCase() })}
          error={errorOf('language')}
          help="Three letters of ISO 639-2/B, such as wel for Welsh."
        />
      )}
    </>
  );
}

/** What new editions, formats and prices begin with. */
export function UsualPart(props: SettingFields) {
  const { values, change, errorOf } = props;
  return (
    <div className="columns">
      <Language {...props} />
      <Select
        label="Currency"
        name="currency"
        value={values.currency}
        onChange={(currency) => change({ currency })}
        choices={currencyChoices(values.currency)}
        error={errorOf('currency')}
        help="Offered first where an amount is typed."
      />
      <Select
        label="Lengths"
        name="lengthUnit"
        value={values.lengthUnit}
        onChange={(lengthUnit) => change({ lengthUnit })}
        choices={[
          { value: 'mm', label: 'Millimetres' },
          { value: 'in', label: 'Inches' },
        ]}
        error={errorOf('lengthUnit')}
        help="Shown first; both can be typed everywhere."
      />
    </div>
  );
}
