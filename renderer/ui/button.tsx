import type { ReactNode, Ref } from 'react';
import { classNames } from './class-names.ts';

/** `primary` once a view at most; `danger` for what cannot be taken back; `quiet` inside tables and texts. */
export type ButtonKind = 'primary' | 'plain' | 'quiet' | 'danger';

export interface ButtonProps {
  children: ReactNode;
  onClick?: (() => void) | undefined;
  kind?: ButtonKind | undefined;
  type?: 'button' | 'submit' | undefined;
  disabled?: boolean | undefined;
  /** The command is under way: the button keeps its focus and ignores presses. */
  pending?: boolean | undefined;
  /** Why the button is disabled; read out and shown on hover, and the button stays reachable by keyboard. */
  reason?: string | undefined;
  expanded?: boolean | undefined;
  controls?: string | undefined;
  label?: string | undefined;
  buttonRef?: Ref<HTMLButtonElement> | undefined;
}

/** A button that stays focusable while pending or refused with a reason. */
export function Button(props: ButtonProps) {
  const { children, onClick, kind = 'plain', type = 'button', disabled, pending, reason } = props;
  const still = Boolean(pending || (disabled && reason));
  return (
    <button
      ref={props.buttonRef}
      type={type}
      className={classNames('button', `button-${kind}`)}
      disabled={disabled && !reason}
      aria-disabled={still || undefined}
      aria-busy={pending || undefined}
      aria-expanded={props.expanded}
      aria-controls={props.controls}
      aria-label={props.label}
      aria-description={disabled ? reason : undefined}
      title={disabled ? reason : undefined}
      onClick={(event) => {
        if (still) event.preventDefault();
        else onClick?.();
      }}
    >
      {children}
      {pending ? <span className="button-pending" aria-hidden="true" /> : null}
    </button>
  );
}
