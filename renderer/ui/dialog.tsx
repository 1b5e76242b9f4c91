import { type ReactNode, useEffect, useId, useRef } from 'react';
import { IconButton } from './icon-button.tsx';
import { LiveRegions } from './live-regions.tsx';

export interface DialogProps {
  open: boolean;
  /** Called by Esc, by the close button, never by a press outside: half-typed work is not lost by a slip. */
  onClose: () => void;
  title: string;
  children: ReactNode;
  /** The row of buttons; put the confirming one first. */
  footer?: ReactNode;
  width?: 'narrow' | 'medium' | 'wide' | undefined;
}

const FIRST_FIELD = '.dialog-body :is(input, select, textarea):not(:disabled)';

function OpenDialog({ onClose, title, children, footer, width = 'medium' }: DialogProps) {
  const ref = useRef<HTMLDialogElement>(null);
  const id = useId();
  useEffect(() => {
    const dialog = ref.current;
    const opener = document.activeElement;
    dialog?.showModal();
    // The browser would choose the close button; a form is opened to be filled in.
    dialog?.querySelector<HTMLElement>(FIRST_FIELD)?.focus();
    return () => {
      dialog?.close();
      if (opener instanceof HTMLElement && opener.isConnected) opener.focus();
    };
  }, []);
  return (
    <dialog
      ref={ref}
      className={`dialog dialog-${width}`}
      aria-labelledby={id}
      onCancel={(event) => {
        // React hands on the event of a dialog within this one, and of a file chooser that is left.
        if (event.target !== event.currentTarget) return;
        event.preventDefault();
        onClose();
      }}
    >
      <div className="dialog-header">
        <h2 id={id}>{title}</h2>
        <IconButton sign="close" label="Close" labelHidden onClick={onClose} />
      </div>
      <div className="dialog-body">{children}</div>
      {footer ? <div className="dialog-footer">{footer}</div> : null}
      <LiveRegions />
    </dialog>
  );
}

/** The browser's own modal dialog: focus stays inside, Esc closes, focus returns to the opener. */
export function Dialog(props: DialogProps) {
  return props.open ? <OpenDialog {...props} /> : null;
}
