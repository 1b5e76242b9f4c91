import { useState } from 'react';
import type { Settings } from '../../../src/contract/settings.ts';
import { CallRefused, call, useCommand } from '../../api.ts';
import { saveFile } from '../../lib/save-file.ts';
import { announce } from '../../status.ts';
import { Button, Dialog, Refused, Select, TextInput } from '../../ui/index.ts';
import { useGuardedClose } from '../../ui/use-guarded-close.tsx';

type As = 'tasks' | 'events';

/** Hands the agenda to the person as a calendar file. */
async function download(as: As): Promise<void> {
  try {
    const { fileName, text } = await call('tasks.calendar', { as });
    saveFile(fileName, new Blob([text], { type: 'text/calendar;charset=utf-8' }));
    announce(`${fileName} goes to your downloads.`);
  } catch (thrown) {
    announce(thrown instanceof CallRefused ? thrown.message : String(thrown), 'refused');
  }
}

const KEPT = [
  { value: 'off', label: 'No' },
  { value: 'tasks', label: 'Yes, tasks as to-dos' },
  { value: 'events', label: 'Yes, tasks as all-day entries' },
] as const;

interface CalendarDialogProps {
  settings: Settings;
  readOnly: string | undefined;
  onClose: () => void;
}

/** A calendar file once, or one that is kept up to date for a calendar program to follow. */
export function CalendarDialog({ settings, readOnly, onClose }: CalendarDialogProps) {
  const [kept, setKept] = useState(settings.calendar);
  const [folder, setFolder] = useState(settings.calendarFolder);
  const update = useCommand('settings.update');
  const same = kept === settings.calendar && folder === settings.calendarFolder;
  const guard = useGuardedClose(!same, onClose);
  const keep = async () => {
    const answer = await update.run(
      { calendar: kept, calendarFolder: folder },
      kept === 'off'
        ? 'No calendar file is kept any more.'
        : 'The calendar file is kept up to date from now on.',
    );
    if (answer.ok) onClose();
  };
  return (
    <>
      <Dialog
        open
        onClose={guard.close}
        title="The agenda in your calendar"
        footer={<Button onClick={guard.close}>Done</Button>}
      >
        <div className="stack">
          <p>
            Taken into a calendar again, a file updates what is there instead of doubling it. Choose all-day
            entries where a calendar shows no to-dos.
          </p>
          <div className="row">
            <Button onClick={() => void download('tasks')}>Save with to-dos</Button>
            <Button onClick={() => void download('events')}>Save with all-day entries</Button>
          </div>
          <Select
            label="Keep a file up to date"
            name="calendar"
            value={kept}
            onChange={setKept}
            choices={KEPT}
            disabled={readOnly !== undefined}
            help="Written anew after each change; a calendar program that follows it shows the agenda by itself. Turned off, the last file stays where it is."
          />
          <TextInput
            label="Folder of that file"
            name="calendarFolder"
            mono
            value={folder}
            onChange={setFolder}
            disabled={readOnly !== undefined}
            error={update.errorOf('calendarFolder')}
            help="The full path; left empty, beside the catalogue file."
          />
          <Refused refusal={update.refusal} fields={['calendarFolder']} />
          <div>
            <Button
              kind="primary"
              pending={update.pending}
              disabled={readOnly !== undefined || same}
              reason={readOnly ?? 'Nothing is changed.'}
              onClick={() => void keep()}
            >
              Save this choice
            </Button>
          </div>
        </div>
      </Dialog>
      {guard.question}
    </>
  );
}
