import { saveFile } from '../../lib/save-file.ts';
import { announce } from '../../status.ts';

/** Hands a text to the person as a file of this name. */
export function saveText(fileName: string, text: string, type: string): void {
  saveFile(fileName, new Blob([text], { type: `${type};charset=utf-8` }));
  announce(`${fileName} goes to your downloads.`);
}
