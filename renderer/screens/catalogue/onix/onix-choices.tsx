import type { OnixVersion, TagSet } from '../../../../src/contract/onix.ts';
import { Checkbox, DateInput, Select } from '../../../ui/index.ts';

export interface OnixChoice {
  version: OnixVersion;
  tags: TagSet;
  /** YYYY-MM-DD, or empty for everything. */
  since: string;
  announcedOnly: boolean;
}

export const USUAL_ONIX: OnixChoice = {
  version: '3.1',
  tags: 'reference',
  since: '',
  announcedOnly: false,
};

/** The choice as the operation takes it. */
export function onixInput({ since, ...rest }: OnixChoice) {
  return since === '' ? rest : { ...rest, since };
}

/** How an ONIX message is written; `whole` where it is of the whole catalogue, `sheet` where it goes to the agency. */
export function OnixChoices({
  value,
  onChange,
  whole,
  sheet,
}: {
  value: OnixChoice;
  onChange: (value: OnixChoice) => void;
  whole: boolean;
  sheet: boolean;
}) {
  const put = (change: Partial<OnixChoice>) => onChange({ ...value, ...change });
  return (
    <>
      <Select
        label="Version of ONIX"
        width="medium"
        value={value.version}
        onChange={(version) => put({ version })}
        choices={[
          { value: '3.1', label: '3.1, the newest' },
          { value: '3.0', label: '3.0, for those who do not take 3.1 yet' },
        ]}
        help="Whoever is to load the file says which one they take."
      />
      <Select
        label="Names in the file"
        width="medium"
        value={value.tags}
        onChange={(tags) => put({ tags })}
        choices={[
          { value: 'reference', label: 'Reference names, which people can read' },
          { value: 'short', label: 'Short tags, a smaller file' },
        ]}
      />
      {whole && !sheet ? (
        <DateInput
          label="Only what changed since"
          value={value.since}
          onChange={(since) => put({ since })}
          help="Leave it empty for everything. Give the day of the last file you sent."
        />
      ) : null}
      {sheet ? null : (
        <Checkbox
          label="Leave out formats that no channel has seen yet"
          checked={value.announcedOnly}
          onChange={(announcedOnly) => put({ announcedOnly })}
        />
      )}
    </>
  );
}
