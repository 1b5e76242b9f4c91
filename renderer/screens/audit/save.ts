import { announce } from '../../status.ts';

/** Hands a text to the person as a file of this name; where it is kept is theirs to say. */
export function saveText(fileName: string, text: string, type: string): void {
  const address = URL.createObjectURL(new Blob([text], { type: `${type};charset=utf-8` }));
  const link = document.createElement('a');
  link.href = address;
  link.download = fileName;
  link.click();
  // The download has its own hold on the text once it has begun.
  window.setTimeout(() => URL.revokeObjectURL(address), 10_000);
  announce(`${fileName} goes to your downloads.`);
}
