import { dismissStatus, useStatus } from '../status.ts';
import { IconButton } from '../ui/index.ts';
import { NoticeShape } from '../ui/standing-shapes.tsx';

/** The last message, at the foot of the window; the live regions read it out. */
export function StatusLine() {
  const status = useStatus();
  if (!status) return null;
  return (
    <section aria-label="Latest message" className={`status-line status-${status.tone}`} key={status.id}>
      <NoticeShape tone={status.tone === 'done' ? 'done' : 'stop'} />
      <p>{status.text}</p>
      <IconButton sign="close" label="Dismiss the message" labelHidden onClick={dismissStatus} />
    </section>
  );
}
