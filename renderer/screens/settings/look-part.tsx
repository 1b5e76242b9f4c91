import type { Settings } from '../../../src/contract/settings.ts';
import { useCommand } from '../../api.ts';
import { Refused, Section, Select } from '../../ui/index.ts';

const THEMES = [
  { value: 'auto', label: 'As the system has it' },
  { value: 'light', label: 'Light' },
  { value: 'dark', label: 'Dark' },
] as const satisfies readonly { value: Settings['theme']; label: string }[];

/** Light or dark: saved and shown as soon as it is chosen. */
export function LookPart({ theme, readOnly }: { theme: Settings['theme']; readOnly: string | undefined }) {
  const command = useCommand('settings.update');
  const choose = (next: Settings['theme']) => {
    const name = THEMES.find((one) => one.value === next)?.label ?? next;
    void command.run({ theme: next }, `Look: ${name.toLowerCase()}.`);
  };
  return (
    <Section title="Look">
      <div className="stack">
        <Select
          label="Light or dark"
          width="medium"
          value={theme}
          onChange={choose}
          choices={THEMES}
          disabled={readOnly !== undefined}
          help={readOnly ?? 'Shown and saved at once.'}
        />
        <Refused refusal={command.refusal} />
      </div>
    </Section>
  );
}
