import { useStatus } from '../status.ts';

/**
 * Reads the status message out. Dialogs carry regions of their own, since a modal dialog hides
 * everything else from assistive technology.
 */
export function LiveRegions() {
  const status = useStatus();
  return (
    <div className="visually-hidden">
      <p role="status" aria-live="polite">
        {status?.tone === 'done' ? status.text : ''}
      </p>
      <p role="alert" aria-live="assertive">
        {status?.tone === 'refused' ? status.text : ''}
      </p>
    </div>
  );
}
