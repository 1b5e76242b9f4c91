import { announce } from '../status.ts';
import { Button, type ButtonKind } from './button.tsx';
import { IconButton } from './icon-button.tsx';

export interface CopyButtonProps {
  text: string;
  /** What is copied, for the announcement: `The request text`. */
  what: string;
  /** Words on the button; `Copy` if left out. */
  label?: string | undefined;
  /** Sign alone, with the label read out: for the end of a line of text. */
  small?: boolean | undefined;
  kind?: ButtonKind | undefined;
}

/** The old way, for windows where the clipboard is withheld; the dialog on top takes the helper. */
function copyBySelection(text: string): boolean {
  const holder = document.querySelector('dialog[open]:last-of-type') ?? document.body;
  const helper = document.createElement('textarea');
  const before = document.activeElement;
  helper.value = text;
  helper.className = 'visually-hidden';
  holder.append(helper);
  helper.select();
  const done = document.execCommand('copy');
  helper.remove();
  if (before instanceof HTMLElement) before.focus();
  return done;
}

/** Puts text on the clipboard and says whether that worked. */
export async function copyText(text: string, what: string): Promise<boolean> {
  let done: boolean;
  try {
    await navigator.clipboard.writeText(text);
    done = true;
  } catch {
    done = copyBySelection(text);
  }
  if (done) announce(`${what} is copied.`);
  else announce(`${what} could not be copied here; select the text and copy it by hand.`, 'refused');
  return done;
}

/** Copies a text to the clipboard and announces it. */
export function CopyButton({ text, what, label = 'Copy', small, kind }: CopyButtonProps) {
  const onClick = () => void copyText(text, what);
  if (small) return <IconButton sign="copy" label={`${label} ${what}`} labelHidden onClick={onClick} />;
  return (
    <Button kind={kind} onClick={onClick}>
      {label}
    </Button>
  );
}
