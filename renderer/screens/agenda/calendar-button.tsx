import { useState } from 'react';
import { useQueryOf } from '../../api.ts';
import { Button } from '../../ui/index.ts';
import { CalendarDialog } from './calendar-dialog.tsx';

/** Opens the ways to have the agenda in a calendar. */
export function CalendarButton({ readOnly }: { readOnly: string | undefined }) {
  const settings = useQueryOf('settings.get', {}).data;
  const [open, setOpen] = useState(false);
  return (
    <>
      <Button onClick={() => setOpen(true)}>Calendar file…</Button>
      {open && settings ? (
        <CalendarDialog settings={settings} readOnly={readOnly} onClose={() => setOpen(false)} />
      ) : null}
    </>
  );
}
