import { useState } from 'react';
import type { Settings } from '../../../src/contract/settings.ts';
import { Select, TextInput } from '../../ui/index.ts';
import { countryCodes, countryNames } from './countries.ts';
import type { SettingFields } from './fields.ts';

type Scope = Settings['salesRights']['scope'];

const SCOPES: { value: Scope; label: string }[] = [
  { value: 'unstated', label: 'Not stated' },
  { value: 'world', label: 'The whole world' },
  { value: 'only', label: 'Only some countries' },
  { value: 'except', label: 'The world except some countries' },
];

/** Countries by their codes, as typed; the names they stand for are shown below. */
function Countries({ values, change, errorOf }: SettingFields) {
  const { scope, countries } = values.salesRights;
  const [typed, setTyped] = useState('');
  const text = countryCodes(typed).join() === countries.join() ? typed : countries.join(' ');
  return (
    <TextInput
      label={scope === 'only' ? 'Countries where they may be sold' : 'Countries where they may not be sold'}
      name="salesCountries"
      mono
      value={text}
      onChange={(next) => {
        setTyped(next);
        change({ salesRights: { scope, countries: countryCodes(next) } });
      }}
      error={errorOf('salesRights')}
      help={
        countries.length > 0
          ? `${countryNames(countries)}.`
          : 'Two letters each (ISO 3166-1), parted by blanks or commas, such as GB IE.'
      }
    />
  );
}

/** Where the books come from and where they may be sold, as records for others tell it. */
export function RightsPart(props: SettingFields) {
  const { values, change, errorOf } = props;
  const { countryOfPublication: country, salesRights } = values;
  const listed = salesRights.scope === 'only' || salesRights.scope === 'except';
  return (
    <div className="columns">
      <TextInput
        label="Country of publication"
        name="countryOfPublication"
        mono
        width="short"
        value={country}
        onChange={(text) => change({ countryOfPublication: text.trim().toUpperCase() })}
        error={errorOf('countryOfPublication')}
        help={
          country === ''
            ? 'Two letters (ISO 3166-1), such as GB. It goes into ONIX records and the sheet for the ISBN agency.'
            : `${countryNames([country])}. It goes into ONIX records and the sheet for the ISBN agency.`
        }
      />
      <Select
        label="Where your books may be sold"
        name="salesRights"
        value={salesRights.scope}
        onChange={(scope) =>
          change({
            salesRights: {
              scope,
              countries: scope === 'only' || scope === 'except' ? salesRights.countries : [],
            },
          })
        }
        choices={SCOPES}
        help="Said in every ONIX record, for all your books alike. What you may sell where is in your contracts with authors and agents: ask a professional where you are not sure."
      />
      {listed ? <Countries {...props} /> : null}
    </div>
  );
}
