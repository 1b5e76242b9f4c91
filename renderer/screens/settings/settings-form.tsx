import { useState } from 'react';
import { type Settings, updateSettings } from '../../../src/contract/settings.ts';
import { Button, Notice, Refused, Section, TextInput } from '../../ui/index.ts';
import { useInlineErrors } from '../work/parts/use-inline-errors.ts';
import { isFullPath } from './backups/words.ts';
import { DaysPart } from './days-part.tsx';
import { PriceEndings } from './endings.tsx';
import type { SettingFields } from './fields.ts';
import { changesFrom, useKeptChanges } from './kept-changes.ts';
import { NamesPart } from './names-part.tsx';
import { Papers } from './papers.tsx';
import type { FieldErrors } from './parts/input-check.ts';
import { useCheckedCommand } from './parts/use-checked-command.ts';
import { RightsPart } from './rights-part.tsx';
import { UsualPart } from './usual-part.tsx';

interface SettingsFormProps {
  file: string;
  saved: Settings;
  readOnly: string | undefined;
}

function BackupFolder({ values, change, errorOf }: SettingFields) {
  return (
    <TextInput
      label="Folder for backups"
      name="backupFolder"
      mono
      value={values.backupFolder}
      onChange={(backupFolder) => change({ backupFolder })}
      error={errorOf('backupFolder')}
      help="Left empty, they go into a folder beside the catalogue file. The full path of a folder on another disk keeps them safe if this disk is lost. Backups taken before stay where they are."
    />
  );
}

/** A path that depends on where the program was started would scatter the backups. */
function folderWrong(folder: string): FieldErrors {
  if (folder.trim() === '' || isFullPath(folder)) return {};
  return {
    backupFolder:
      'Write the full path of the folder, such as /home/press/backups or D:\\Backups, or nothing.',
  };
}

interface SaveBarProps {
  count: number;
  pending: boolean;
  readOnly: string | undefined;
  onDrop: () => void;
}

/** Stays in view while something is changed. */
function SaveBar({ count, pending, readOnly, onDrop }: SaveBarProps) {
  const still = readOnly ?? (count === 0 ? 'Nothing is changed.' : undefined);
  return (
    <div className={count > 0 ? 'save-bar save-bar-on' : 'save-bar'}>
      <Button type="submit" kind="primary" pending={pending} disabled={still !== undefined} reason={still}>
        Save the settings
      </Button>
      {count > 0 ? <Button onClick={onDrop}>Undo the changes</Button> : null}
      <p className="soft">
        {count === 0
          ? ''
          : count === 1
            ? 'One setting is not saved yet.'
            : `${count} settings are not saved yet.`}
      </p>
    </div>
  );
}

/** How long a request may wait, beside the changes: an emptied field is no number to be kept. */
function useOverdue(days: number, change: SettingFields['change']) {
  const [empty, setEmpty] = useState(false);
  const wrong: FieldErrors = empty ? { removalOverdueDays: 'Write a number of days from 1 to 365.' } : {};
  return {
    overdue: empty ? undefined : days,
    wrong,
    changeOverdue: (next: number | undefined) => {
      setEmpty(next === undefined);
      if (next !== undefined) change({ removalOverdueDays: next });
    },
    fill: () => setEmpty(false),
  };
}

/** The settings that are saved together; what is typed is kept until then, also over moves to other screens. */
export function SettingsForm({ file, saved, readOnly }: SettingsFormProps) {
  const kept = useKeptChanges(file, saved);
  const values = { ...saved, ...kept.changes };
  const command = useCheckedCommand('settings.update', updateSettings.input);
  const { overdue, wrong, changeOverdue, fill } = useOverdue(values.removalOverdueDays, kept.change);
  const inline = useInlineErrors('settings.update', changesFrom(saved, kept.changes));
  const errorOf = (field: string) => command.errorOf(field) ?? inline(field);
  const fields: SettingFields = { values, change: kept.change, errorOf };
  const count = Object.keys(kept.changes).length + Object.keys(wrong).length;
  const drop = () => {
    kept.drop();
    fill();
    command.clear();
  };
  return (
    <form
      ref={command.form}
      onSubmit={(event) => {
        event.preventDefault();
        const own = { ...wrong, ...folderWrong(values.backupFolder) };
        void command.send(changesFrom(saved, kept.changes), 'The settings are saved.', own);
      }}
    >
      {kept.fromBefore ? (
        <Notice tone="care" title="Changes from before are not saved yet.">
          They are filled in below.
        </Notice>
      ) : null}
      <fieldset className="setting-parts" disabled={readOnly !== undefined}>
        <legend className="visually-hidden">Settings of this catalogue</legend>
        <Section title="Names">
          <NamesPart {...fields} />
        </Section>
        <Section title="Origin and sales rights">
          <RightsPart {...fields} />
        </Section>
        <Section title="What is usual">
          <UsualPart {...fields} />
        </Section>
        <Section title="How prices end">
          <PriceEndings {...fields} />
        </Section>
        <Section title="Papers">
          <Papers {...fields} />
        </Section>
        <Section title="Days">
          <DaysPart {...fields} overdue={overdue} changeOverdue={changeOverdue} />
        </Section>
        <Section title="Where backups go">
          <BackupFolder {...fields} />
        </Section>
      </fieldset>
      <Refused refusal={command.refusal} fields={Object.keys(saved)} />
      <SaveBar count={count} pending={command.pending} readOnly={readOnly} onDrop={drop} />
    </form>
  );
}
