import type { Ref } from 'react';
import { classNames } from './class-names.ts';
import { Sign, type SignName } from './shapes.tsx';

export interface IconButtonProps {
  sign: SignName;
  /** Always given; seen beside the sign unless `labelHidden`. */
  label: string;
  labelHidden?: boolean | undefined;
  onClick: () => void;
  disabled?: boolean | undefined;
  expanded?: boolean | undefined;
  controls?: string | undefined;
  buttonRef?: Ref<HTMLButtonElement> | undefined;
}

/** A small button with one of our signs and its word. */
export function IconButton(props: IconButtonProps) {
  const { sign, label, labelHidden, onClick, disabled, expanded, controls } = props;
  return (
    <button
      ref={props.buttonRef}
      type="button"
      className="button button-quiet icon-button"
      disabled={disabled}
      aria-expanded={expanded}
      aria-controls={controls}
      title={labelHidden ? label : undefined}
      onClick={onClick}
    >
      <Sign name={sign} />
      <span className={classNames(labelHidden && 'visually-hidden')}>{label}</span>
    </button>
  );
}
