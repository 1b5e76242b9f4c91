import { TextInput } from '../../ui/index.ts';
import type { SettingFields } from './fields.ts';

/** Names of the catalogue and of the press. */
export function NamesPart({ values, change, errorOf }: SettingFields) {
  return (
    <div className="columns">
      <TextInput
        label="Name of this catalogue"
        name="catalogueName"
        required
        value={values.catalogueName}
        onChange={(catalogueName) => change({ catalogueName })}
        error={errorOf('catalogueName')}
        help="Stands at the head of every screen."
      />
      <TextInput
        label="Publisher"
        name="publisher"
        value={values.publisher}
        onChange={(publisher) => change({ publisher })}
        error={errorOf('publisher')}
        help="Who holds the numbers, as the ISBN agency knows your press."
      />
      <TextInput
        label="Imprint"
        name="imprint"
        value={values.imprint}
        onChange={(imprint) => change({ imprint })}
        error={errorOf('imprint')}
        help="The name on the title page; new editions begin with it."
      />
    </div>
  );
}
