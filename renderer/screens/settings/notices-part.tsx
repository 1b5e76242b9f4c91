import { useNotices } from '../../shell/due-notices.ts';
import { Checkbox, Notice, Section } from '../../ui/index.ts';

/** Whether this computer tells of due tasks; it is kept here and not in the catalogue. */
export function NoticesPart() {
  const [state, set] = useNotices();
  return (
    <Section title="Notices on this computer">
      <div className="stack">
        <Checkbox
          label="Tell me once a day of tasks that are due"
          help="Shown by the system while Edition Ledger is open. Nothing is sent anywhere."
          checked={state !== 'off'}
          onChange={(wanted) => void set(wanted)}
        />
        {state === 'denied' ? (
          <Notice tone="care" live title="The system does not let Edition Ledger show notices.">
            Allow notifications for it in the settings of your system or browser, then switch this off and on.
          </Notice>
        ) : null}
      </div>
    </Section>
  );
}
